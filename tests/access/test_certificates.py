"""What the certificates say: lifetimes, constraints, key use; and who may read their files."""

import ipaddress
import stat
from datetime import timedelta
from pathlib import Path

import pytest
from cryptography import x509
from cryptography.exceptions import InvalidSignature
from cryptography.hazmat.primitives.asymmetric import ec
from cryptography.hazmat.primitives.hashes import SHA256
from cryptography.x509.oid import ExtendedKeyUsageOID

from tests.access.bench import today
from webapp.access import authority as authorities
from webapp.access import leaf as leaves
from webapp.access.authority import USES, Authority, AuthorityError, authority
from webapp.access.leaf import issue, leaf

NAME = "shoulderline-abcd2345.local"
HOSTS = [NAME, "192.168.1.20", "fd00::2"]
SECOND = timedelta(seconds=1)


@pytest.fixture
def root(tmp_path: Path) -> Authority:
    return authority(tmp_path / "shop", NAME)


def uses(certificate: x509.Certificate) -> list[str]:
    found = certificate.extensions.get_extension_for_class(x509.KeyUsage)
    assert found.critical
    agreeing = found.value.key_agreement
    readable = [use for use in USES if agreeing or use not in ("encipher_only", "decipher_only")]
    return [use for use in readable if getattr(found.value, use)]


def life(certificate: x509.Certificate) -> timedelta:
    return certificate.not_valid_after_utc - certificate.not_valid_before_utc


def test_the_root_lives_ten_years_from_a_day_ago(root: Authority) -> None:
    assert life(root.certificate) == timedelta(days=3652)
    assert today() - root.certificate.not_valid_before_utc >= timedelta(days=1)


def test_the_root_is_p256_signed_with_sha256_and_signs_leaves_only(root: Authority) -> None:
    assert isinstance(root.certificate.public_key(), ec.EllipticCurvePublicKey)
    assert isinstance(root.key.curve, ec.SECP256R1)
    assert isinstance(root.certificate.signature_hash_algorithm, SHA256)
    basic = root.certificate.extensions.get_extension_for_class(x509.BasicConstraints)
    assert (basic.critical, basic.value.ca, basic.value.path_length) == (True, True, 0)
    assert uses(root.certificate) == ["key_cert_sign", "crl_sign"]


def test_the_root_is_held_to_private_names_and_addresses(root: Authority) -> None:
    found = root.certificate.extensions.get_extension_for_class(x509.NameConstraints)
    assert found.critical
    assert found.value.excluded_subtrees is None
    permitted = [each.value for each in found.value.permitted_subtrees or []]
    numbers = ["10.0.0.0/8", "172.16.0.0/12", "192.168.0.0/16", "169.254.0.0/16", "fc00::/7", "fe80::/10"]
    assert permitted == ["local", "home.arpa", *map(ipaddress.ip_network, numbers)]


def test_a_leaf_lives_397_days_from_a_day_ago_and_serves_only(root: Authority, tmp_path: Path) -> None:
    now = today().replace(microsecond=0)
    made = issue(tmp_path / "leaf.pem", root, HOSTS, now).certificate
    assert life(made) == timedelta(days=397)
    assert made.not_valid_before_utc == now - timedelta(days=1)
    assert uses(made) == ["digital_signature"]
    assert list(made.extensions.get_extension_for_class(x509.ExtendedKeyUsage).value) == [
        ExtendedKeyUsageOID.SERVER_AUTH
    ]
    basic = made.extensions.get_extension_for_class(x509.BasicConstraints)
    assert (basic.critical, basic.value.ca) == (True, False)


def test_a_leaf_names_its_hosts_and_its_root(root: Authority, tmp_path: Path) -> None:
    made = leaf(tmp_path, root, HOSTS)
    assert made.hosts == set(HOSTS)
    made.certificate.verify_directly_issued_by(root.certificate)
    held = made.certificate.extensions.get_extension_for_class(x509.AuthorityKeyIdentifier).value
    own = root.certificate.extensions.get_extension_for_class(x509.SubjectKeyIdentifier).value
    assert held.key_identifier == own.digest


def test_a_leaf_never_outlives_its_root(root: Authority, tmp_path: Path) -> None:
    late = root.certificate.not_valid_after_utc - timedelta(days=100)
    made = issue(tmp_path / "leaf.pem", root, HOSTS, late)
    assert made.certificate.not_valid_after_utc == root.certificate.not_valid_after_utc
    assert not made.due(root, HOSTS, late + timedelta(days=90))  # another one would end on the same day


def test_only_their_owner_reads_the_files(root: Authority, tmp_path: Path) -> None:
    leaf(tmp_path / "shop", root, HOSTS)
    files = sorted((tmp_path / "shop").iterdir())
    assert [file.name for file in files] == ["authority.pem", "leaf.pem"]
    assert {stat.S_IMODE(file.stat().st_mode) for file in files} == {0o600}
    assert stat.S_IMODE((tmp_path / "shop").stat().st_mode) == 0o700


def test_the_authority_is_made_once(root: Authority, tmp_path: Path) -> None:
    assert authority(tmp_path / "shop", "another.local").certificate == root.certificate


def test_a_leaf_is_kept_until_under_thirty_days_are_left(root: Authority, tmp_path: Path) -> None:
    first = leaf(tmp_path, root, HOSTS)
    ends = first.certificate.not_valid_after_utc
    assert leaf(tmp_path, root, HOSTS, ends - timedelta(days=30)).certificate == first.certificate
    second = leaf(tmp_path, root, HOSTS, ends - timedelta(days=30) + SECOND)
    assert second.certificate != first.certificate
    assert second.certificate.public_key() != first.certificate.public_key()


def test_a_leaf_is_renewed_for_another_address_and_not_for_one_that_went(root: Authority, tmp_path: Path) -> None:
    first = leaf(tmp_path, root, HOSTS)
    assert leaf(tmp_path, root, HOSTS[:2]).certificate == first.certificate
    assert leaf(tmp_path, root, [*HOSTS, "10.1.1.1"]).hosts == {*HOSTS, "10.1.1.1"}


def test_a_leaf_of_another_authority_is_renewed(root: Authority, tmp_path: Path) -> None:
    other = authority(tmp_path / "other", NAME)
    issue(tmp_path / leaves.FILE, other, HOSTS, today())
    made = leaf(tmp_path, root, HOSTS)
    made.certificate.verify_directly_issued_by(root.certificate)
    with pytest.raises(InvalidSignature):
        made.certificate.verify_directly_issued_by(other.certificate)


def test_a_damaged_leaf_is_renewed_and_a_damaged_authority_is_said(root: Authority, tmp_path: Path) -> None:
    (tmp_path / leaves.FILE).write_text("nothing")
    assert leaf(tmp_path, root, HOSTS).hosts == set(HOSTS)
    file = tmp_path / "shop" / authorities.FILE
    file.write_bytes(file.read_bytes()[:-40])
    with pytest.raises(AuthorityError, match="backup"):
        authority(tmp_path / "shop", NAME)


def test_a_key_beside_another_certificate_is_said(root: Authority, tmp_path: Path) -> None:
    authority(tmp_path / "other", NAME)
    key = (tmp_path / "other" / authorities.FILE).read_text().partition("-----BEGIN CERT")[0]
    file = tmp_path / "shop" / authorities.FILE
    file.write_text(key + file.read_text()[file.read_text().index("-----BEGIN CERT") :])
    with pytest.raises(AuthorityError, match="do not belong together"):
        authority(tmp_path / "shop", NAME)


def test_the_fingerprint_is_the_sha256_in_pairs(root: Authority) -> None:
    pairs = root.fingerprint.split(" ")
    assert len(pairs) == 32
    assert bytes.fromhex("".join(pairs)) == root.certificate.fingerprint(SHA256())
