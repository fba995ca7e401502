"""The head and foot that all cards of a container share."""

from __future__ import annotations

from service.cards.parts import Head
from service.cards.words import KIND_WORDS, join_words, write_date, write_questions
from service.contents.packing import PackedObject, Packing
from service.printed import to_print
from service.records.record import Museum
from service.symbols.address import AddressPattern


def compose_head(packing: Packing, museum: Museum) -> Head:
    """Word the head of a container's cards.

    Raises `AddressError` when the museum's address pattern cannot be used.
    """
    container = packing.container
    return Head(
        container_number=container.container_number,
        kind_words=KIND_WORDS[container.kind],
        title=container.title,
        museum=museum.name,
        location=join_words(container.location, between=", ") if museum.show_location else "",
        address=_container_address(packing, museum),
        questions=write_questions(container.questions, museum.questions),
        revision=packing.revision,
        packed=_write_packed(packing),
    )


def object_address(packed: PackedObject, museum: Museum) -> str:
    """Give the catalogue address of an object; its bare number where no pattern is set."""
    record = packed.record
    if record.catalogue_url:
        return record.catalogue_url
    if not museum.object_address:
        return record.object_number
    pattern = AddressPattern(museum.object_address, upper_case=museum.upper_case_addresses)
    return pattern.fill(record.object_number)


def full_payload(head: Head) -> str:
    """Give what the symbol says: the address, with its query where it has one."""
    is_address = head.address.startswith(("https://", "HTTPS://"))
    if not head.query or not is_address:
        return head.address
    return f"{head.address}{'&' if '?' in head.address else '?'}{head.query}"


def _container_address(packing: Packing, museum: Museum) -> str:
    number = packing.container.container_number
    if museum.container_address:
        pattern = AddressPattern(museum.container_address, upper_case=museum.upper_case_addresses)
        return pattern.fill(number)
    only = packing.everything
    if len(only) == 1 and museum.object_address:
        return object_address(only[0], museum)
    return number


def _write_packed(packing: Packing) -> str:
    day = write_date(packing.packed_on) if packing.packed_on else ""
    who = to_print("by {packed_by}", packed_by=packing.packed_by) if packing.packed_by else ""
    return join_words((to_print("Packed"), day, who), between=" ") if day or who else ""
