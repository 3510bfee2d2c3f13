"""The server's certificate: short-lived, for the shop's name and this machine's addresses, renewed in time."""

import ipaddress
from collections.abc import Iterable
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from pathlib import Path

from cryptography import x509
from cryptography.exceptions import InvalidSignature
from cryptography.hazmat.primitives.asymmetric import ec
from cryptography.hazmat.primitives.hashes import SHA256
from cryptography.hazmat.primitives.serialization import Encoding
from cryptography.x509.oid import ExtendedKeyUsageOID, NameOID

from webapp.access.authority import BACK, Authority, only, private
from webapp.access.keeping import keep

FILE = "leaf.pem"  # the key and the certificate: one file, so that they change together
DAYS = timedelta(days=397)
EARLY = timedelta(days=30)
CALLED = "Shoulderline server"  # no host: openssl holds a common name that looks like one to the constraints


@dataclass(frozen=True)
class Leaf:
    """The file that a server loads, and what its certificate says."""

    file: Path
    certificate: x509.Certificate

    @property
    def hosts(self) -> set[str]:
        """Return the names and addresses that it is good for."""
        found = self.certificate.extensions.get_extension_for_class(x509.SubjectAlternativeName).value
        names = found.get_values_for_type(x509.DNSName)
        return {*names, *map(str, found.get_values_for_type(x509.IPAddress))}

    def due(self, root: Authority, hosts: Iterable[str], now: datetime) -> bool:
        """Say whether another one is needed: old, of another authority, or short of a host."""
        ends = self.certificate.not_valid_after_utc
        old = ends - now < EARLY and ends < root.certificate.not_valid_after_utc  # none outlives its root
        return old or not _signed(self.certificate, root) or not set(hosts) <= self.hosts


def _signed(certificate: x509.Certificate, root: Authority) -> bool:
    try:
        certificate.verify_directly_issued_by(root.certificate)
    except (ValueError, TypeError, InvalidSignature):
        return False
    return True


def leaf(folder: Path, root: Authority, hosts: Iterable[str], now: datetime | None = None) -> Leaf:
    """Return the leaf of a folder, made or renewed where that is due."""
    wanted, moment = list(hosts), now or datetime.now(UTC)
    found = read(folder / FILE)
    if found is None or found.due(root, wanted, moment):
        return issue(folder / FILE, root, wanted, moment)
    return found


def read(file: Path) -> Leaf | None:
    """Return the leaf in a file, or None where there is none that can be read: another one costs nothing."""
    try:
        return Leaf(file, x509.load_pem_x509_certificate(file.read_bytes()))
    except (OSError, ValueError):
        return None


def issue(file: Path, root: Authority, hosts: Iterable[str], now: datetime) -> Leaf:
    """Make a leaf with a key of its own, and put it in the place of the one before."""
    key = ec.generate_private_key(ec.SECP256R1())
    certificate = signed(key.public_key(), root, list(hosts), now)
    keep(file, private(key) + certificate.public_bytes(Encoding.PEM))
    return Leaf(file, certificate)


def signed(key: ec.EllipticCurvePublicKey, root: Authority, hosts: list[str], now: datetime) -> x509.Certificate:
    """Sign a leaf for hosts; it never outlives its root."""
    start = now - BACK
    return (
        x509.CertificateBuilder()
        .subject_name(x509.Name([x509.NameAttribute(NameOID.COMMON_NAME, CALLED)]))
        .issuer_name(root.certificate.subject)
        .public_key(key)
        .serial_number(x509.random_serial_number())
        .not_valid_before(start)
        .not_valid_after(min(start + DAYS, root.certificate.not_valid_after_utc))
        .add_extension(x509.BasicConstraints(ca=False, path_length=None), critical=True)
        .add_extension(only("digital_signature"), critical=True)
        .add_extension(x509.ExtendedKeyUsage([ExtendedKeyUsageOID.SERVER_AUTH]), critical=False)
        .add_extension(x509.SubjectAlternativeName([_general(host) for host in hosts]), critical=False)
        .add_extension(x509.SubjectKeyIdentifier.from_public_key(key), critical=False)
        .add_extension(_issued_by(root), critical=False)
        .sign(root.key, SHA256())
    )


def _general(host: str) -> x509.GeneralName:
    try:
        return x509.IPAddress(ipaddress.ip_address(host))
    except ValueError:
        return x509.DNSName(host)


def _issued_by(root: Authority) -> x509.AuthorityKeyIdentifier:
    held = root.certificate.extensions.get_extension_for_class(x509.SubjectKeyIdentifier).value
    return x509.AuthorityKeyIdentifier.from_issuer_subject_key_identifier(held)
