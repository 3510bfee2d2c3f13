"""The shop's own certificate authority: made once, good for private names and addresses and for nothing else."""

from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from pathlib import Path

from cryptography import x509
from cryptography.hazmat.primitives.asymmetric import ec
from cryptography.hazmat.primitives.hashes import SHA256
from cryptography.hazmat.primitives.serialization import (
    Encoding,
    NoEncryption,
    PrivateFormat,
    load_pem_private_key,
)
from cryptography.x509.oid import NameOID

from webapp.access.keeping import keep
from webapp.access.private import RANGES

FILE = "authority.pem"  # the key and the certificate
YEARS = timedelta(days=3652)  # ten years
BACK = timedelta(days=1)  # phones' clocks differ
NAMES = ("local", "home.arpa")  # RFC 6762 and RFC 8375: names that no one on the internet can have


class AuthorityError(Exception):
    """The authority's file cannot be used; the text is for the person in front of it."""


@dataclass(frozen=True)
class Authority:
    """The root certificate and its key."""

    certificate: x509.Certificate
    key: ec.EllipticCurvePrivateKey

    @property
    def der(self) -> bytes:
        """Return the certificate as phones take it."""
        return self.certificate.public_bytes(Encoding.DER)

    @property
    def fingerprint(self) -> str:
        """Return the SHA-256 of the certificate as phones show it: pairs of digits."""
        return self.certificate.fingerprint(SHA256()).hex(" ").upper()


def authority(folder: Path, name: str) -> Authority:
    """Return the authority of a folder, made where there is none; `name` is what phones list it by."""
    file = folder / FILE
    if not file.exists():
        key = ec.generate_private_key(ec.SECP256R1())
        keep(file, private(key) + root(key, name, datetime.now(UTC)).public_bytes(Encoding.PEM))
    return loaded(file)


def loaded(file: Path) -> Authority:
    """Return the authority in a file; raise AuthorityError where it is damaged."""
    try:
        data = file.read_bytes()
        key, certificate = load_pem_private_key(data, None), x509.load_pem_x509_certificate(data)
    except (OSError, ValueError, TypeError) as e:
        raise AuthorityError(f"{file} cannot be read: take it from a backup of the data folder.") from e
    if not isinstance(key, ec.EllipticCurvePrivateKey) or key.public_key() != certificate.public_key():
        raise AuthorityError(f"{file} holds a key and a certificate that do not belong together.")
    return Authority(certificate, key)


def private(key: ec.EllipticCurvePrivateKey) -> bytes:
    """Write a key as text."""
    return key.private_bytes(Encoding.PEM, PrivateFormat.PKCS8, NoEncryption())


def root(key: ec.EllipticCurvePrivateKey, name: str, now: datetime) -> x509.Certificate:
    """Make the root: it signs leaves and nothing else, and only for private names and addresses."""
    called = x509.Name([x509.NameAttribute(NameOID.COMMON_NAME, f"Shoulderline {name}")])
    permitted = [*map(x509.DNSName, NAMES), *map(x509.IPAddress, RANGES)]
    return (
        x509.CertificateBuilder()
        .subject_name(called)
        .issuer_name(called)
        .public_key(key.public_key())
        .serial_number(x509.random_serial_number())
        .not_valid_before(now - BACK)
        .not_valid_after(now - BACK + YEARS)
        .add_extension(x509.BasicConstraints(ca=True, path_length=0), critical=True)
        .add_extension(only("key_cert_sign", "crl_sign"), critical=True)
        .add_extension(x509.NameConstraints(permitted, None), critical=True)
        .add_extension(x509.SubjectKeyIdentifier.from_public_key(key.public_key()), critical=False)
        .sign(key, SHA256())
    )


USES = (
    "digital_signature",
    "content_commitment",
    "key_encipherment",
    "data_encipherment",
    "key_agreement",
    "key_cert_sign",
    "crl_sign",
    "encipher_only",
    "decipher_only",
)


def only(*uses: str) -> x509.KeyUsage:
    """Return a key's use: these and no others."""
    return x509.KeyUsage(**{use: use in uses for use in USES})
