"""The main job: records -> contents -> cards -> pages -> sheets -> PDF -> proof."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

from service.cards.kinds import compose_cards
from service.contents.packing import Packing
from service.errors import ContentsError, ServiceError
from service.findings import Finding, Where, make_finding
from service.pages.fit import Fitting
from service.pages.page import Page
from service.pages.ruler import Ruler
from service.pipeline.choose import fit_on_stock
from service.pipeline.faces import DrawnChunk, Face, draw_faces
from service.pipeline.options import FittedCard, Outcome, PrintFile, PrintOptions
from service.pipeline.ready import Progress, Workshop, make_ready, tell_nobody
from service.records.record import Collection, Museum
from service.render.compose.sheets import DrawnFaces, compose_sheets
from service.render.pictures.prepare import PhotoSource
from service.render.proof.sheets import prove_sheets
from service.sheets.impose import Face as SheetFace
from service.sheets.impose import impose_pages


def print_collection(
    collection: Collection,
    photos: Mapping[str, PhotoSource],
    options: PrintOptions,
    workshop: Workshop,
    *,
    on_progress: Progress = tell_nobody,
) -> Outcome:
    """Print the cards of a collection; every file has been proved.

    A card that cannot be printed is a finding and the others go on.

    Raises:
        ContentsError: When there is nothing to print.
        SheetError: When the stock asked for cannot take the pages.
        ProofFailedError: When a finished sheet does not read back as it should.
    """
    ready = make_ready(collection, photos, options, workshop, on_progress=on_progress)
    cards, fit_findings = _fit_all(ready.packings, ready.museum, options, workshop.ruler)
    if not cards:
        raise ContentsError(_nothing_words(ready.packings, fit_findings))
    faces = list(_list_faces(cards))
    chunks, failed = draw_faces(
        faces,
        ready.thumbnails,
        workshop.workers,
        on_progress=lambda done: on_progress("cards", done, len(faces)),
    )
    groups, failures = _sort_out(cards, faces, failed)
    files = []
    for number, (name, members) in enumerate(groups.items(), start=1):
        own = [chunk for chunk in chunks if chunk.faces[0].group == name]
        files.append(_make_file(members, own, options))
        on_progress("sheets", number, len(groups))
    return Outcome(tuple(files), (*ready.findings, *fit_findings, *failures))


def check_collection(
    collection: Collection,
    photos: Mapping[str, PhotoSource],
    options: PrintOptions,
    workshop: Workshop,
) -> tuple[Finding, ...]:
    """Give everything noticed in records, packings, photos and the fit, without printing."""
    ready = make_ready(collection, photos, options, workshop)
    _, fit_findings = _fit_all(ready.packings, ready.museum, options, workshop.ruler)
    return (*ready.findings, *fit_findings)


def _fit_all(
    packings: Sequence[Packing], museum: Museum, options: PrintOptions, ruler: Ruler
) -> tuple[list[FittedCard], list[Finding]]:
    fitting = Fitting(ruler, museum.aisle_distance_mm)
    kinds = {kind.code: kind for kind in options.kinds}
    cards: list[FittedCard] = []
    findings: list[Finding] = []
    for packing in packings:
        where = Where(container_number=packing.container.container_number)
        try:
            composed = compose_cards(packing, museum, kinds=options.kinds)
        except ServiceError as error:
            findings.append(_failed(where, error))
            continue
        for card in composed:
            try:
                fitted, noticed = fit_on_stock(
                    kinds[card.kind], card, packing.container, fitting, options
                )
            except ServiceError as error:
                findings.append(_failed(where, error, kinds[card.kind].name))
            else:
                cards.append(fitted)
                findings.extend(noticed)
    return cards, list(dict.fromkeys(findings))


def _failed(where: Where, error: ServiceError, kind: str = "") -> Finding:
    message = f"{kind or 'The cards'}: {error}"
    return make_finding("card-failed", where, message, advice=error.advice)


def _nothing_words(packings: Sequence[Packing], findings: Sequence[Finding]) -> str:
    if not packings:
        return "There is no container to print."
    if findings:
        return f"No card could be laid out. {findings[0].message}"
    return "None of the containers gets a card of the kinds asked for."


def _group_of(card: FittedCard) -> str:
    return f"{card.kind.code}\n{card.stock.name}"


def _list_faces(cards: Sequence[FittedCard]) -> Iterable[Face]:
    index = 0
    for card in cards:
        for page in card.pages:
            yield Face(index, _group_of(card), page)
            index += 1


def _sort_out(
    cards: Sequence[FittedCard], faces: Sequence[Face], failed: Mapping[int, ServiceError]
) -> tuple[dict[str, list[tuple[FittedCard, tuple[int, ...]]]], list[Finding]]:
    """Group whole cards by file, in the order of kinds; a card with a failed page is a finding."""
    groups: dict[str, list[tuple[FittedCard, tuple[int, ...]]]] = {}
    findings: list[Finding] = []
    indices = iter(range(len(faces)))
    for card in cards:
        own = tuple(next(indices) for _ in card.pages)
        errors = [failed[index] for index in own if index in failed]
        if errors:
            where = Where(container_number=card.container_number)
            findings.append(_failed(where, errors[0], card.kind.name))
        else:
            groups.setdefault(_group_of(card), []).append((card, own))
    return groups, findings


def _make_file(
    members: Sequence[tuple[FittedCard, tuple[int, ...]]],
    chunks: Sequence[DrawnChunk],
    options: PrintOptions,
) -> PrintFile:
    """Put the faces of one kind and stock on sheets, and prove the file."""
    kind, stock = members[0][0].kind, members[0][0].stock
    pages: dict[int, Page] = {
        index: page for card, own in members for index, page in zip(own, card.pages, strict=True)
    }
    sheets = impose_pages(
        [SheetFace(str(index), page.size) for index, page in pages.items()],
        stock,
        start_position=options.start_position,
        skipped=options.skipped,
        copies=options.copies,
    )
    faces = DrawnFaces(
        tuple(chunk.pdf for chunk in chunks),
        tuple(str(face.index) for chunk in chunks for face in chunk.faces),
        tuple(describe_page(face.page) for chunk in chunks for face in chunk.faces),
    )
    pdf = compose_sheets(faces, sheets, title=f"{kind.name}, {stock.name}")
    prove_sheets(pdf, sheets, faces)
    return PrintFile(kind, stock, pdf, len(sheets), len(members), tuple(pages.values()))


def describe_page(page: Page) -> str:
    """Give the words of a face for whoever cannot see it, in the order of reading."""
    said: list[str] = []
    for block in page.blocks:
        words = getattr(block, "whole", "") or getattr(block, "alt", "")
        if words and (not said or said[-1] != words):
            said.append(words)
    return ". ".join(said)
