"""Chooses the size of each card: by the lid, the end and the contents, or as asked."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence

from service.cards.card import Card, WarningLabel
from service.cards.kinds import (
    CONTENTS_LIST,
    COVER_CARD,
    END_LABEL,
    LID_CARD,
    OBJECT_TAG,
    SHOULDER_TAG,
    SIDE_CARD,
    WARNING_LABEL,
    CardKind,
)
from service.errors import LayoutError, SheetError, SymbolError
from service.findings import Finding, Where, make_finding
from service.geometry import Size
from service.pages.fit import Fitting, fit_card
from service.pages.lid.grid import GOOD_MM
from service.pages.page import Page, PictureBlock
from service.pages.setting.give_way import says_all
from service.pipeline.options import FittedCard, PrintOptions
from service.pipeline.usual_stocks import CARDS, LABELS, SHOULDERS, TAGS, WARNINGS, WHOLE_PAGE
from service.records.record import ContainerRecord
from service.sentence import Sentence
from service.sheets.stock import Stock
from service.sheets.stocks import find_stock

Fit = tuple[tuple[Page, ...], Stock]


def fit_on_stock(
    kind: CardKind, card: Card, container: ContainerRecord, fitting: Fitting, options: PrintOptions
) -> tuple[FittedCard, tuple[Finding, ...]]:
    """Fit a card on the stock asked for, or on the one that suits its container.

    Raises:
        LayoutError: When it fits on none of them.
        SymbolError: When its QR symbol can be read on none of them.
    """
    asked = options.by_kind.get(kind.code, options.stock)
    if asked is not None:
        return FittedCard(kind, card, *_fit(kind, card, asked, fitting)), ()
    chosen, findings = _CHOICES[kind.code](card, container, fitting, options)
    return FittedCard(kind, card, *chosen), findings


def _fit(kind: CardKind, card: Card, stock: Stock, fitting: Fitting) -> Fit:
    return fit_card(card, _as_held(kind, stock.label), fitting), stock


def _as_held(kind: CardKind, size: Size) -> Size:
    """Turn a position the way the card is held: cards lie wide, lists and tags on rails stand."""
    wanted = kind in (LID_CARD, COVER_CARD, SIDE_CARD, OBJECT_TAG)
    if kind in (END_LABEL, WARNING_LABEL) or size.is_landscape is wanted:
        return size
    return size.turned


def _choose_lid(
    card: Card, container: ContainerRecord, fitting: Fitting, options: PrintOptions
) -> tuple[Fit, tuple[Finding, ...]]:
    """Take the smallest card that shows everything well at once, else the one with fewest pages.

    Where a larger card has room for a second language, it is taken before that gives way.
    """
    stocks = [find_stock(name, options.stocks) for name in CARDS[options.paper]]
    lid = container.lid_size
    held = {stock.name: _as_held(LID_CARD, stock.label) for stock in stocks}
    small = [stock for stock in stocks if lid is None or lid.holds(held[stock.name])]
    fits = list(_try_all(LID_CARD, card, small or stocks[:1], fitting))
    good = [fit for fit in fits if _shows_well(fit[0])] or _all_fewest(fits)
    return _with_second(card, good), tuple(_lid_findings(container, fits_lid=bool(small)))


def _lid_findings(container: ContainerRecord, *, fits_lid: bool) -> Iterable[Finding]:
    where = Where(container_number=container.container_number)
    if container.lid_size is None:
        yield make_finding("no-lid-size", where, Sentence("The size of the lid is not recorded."))
    elif not fits_lid:
        yield make_finding(
            "card-too-large", where, Sentence("Even the smallest card is larger than the lid.")
        )


def _shows_well(pages: Sequence[Page]) -> bool:
    pictures = [
        min(block.rect.width_mm, block.rect.height_mm)
        for page in pages
        for block in page.blocks
        if isinstance(block, PictureBlock)
    ]
    return len(pages) == 1 and min(pictures, default=0.0) >= GOOD_MM


def _choose_label(
    card: Card, container: ContainerRecord, fitting: Fitting, options: PrintOptions
) -> tuple[Fit, tuple[Finding, ...]]:
    """Take the first label that fits the end and carries every hazard."""
    stocks = [find_stock(name, options.stocks) for name in LABELS[options.paper]]
    end = container.end_size
    fitting_end = [stock for stock in stocks if end is None or end.holds(stock.label)]
    return next(iter(_try_all(END_LABEL, card, fitting_end or stocks[-1:], fitting))), ()


def _choose_cover(
    card: Card, _container: ContainerRecord, fitting: Fitting, options: PrintOptions
) -> tuple[Fit, tuple[Finding, ...]]:
    stocks = [find_stock(name, options.stocks) for name in CARDS[options.paper][-2:]]
    return next(iter(_try_all(COVER_CARD, card, stocks, fitting))), ()


def _choose_list(
    card: Card, _container: ContainerRecord, fitting: Fitting, options: PrintOptions
) -> tuple[Fit, tuple[Finding, ...]]:
    stock = find_stock(WHOLE_PAGE[options.paper], options.stocks)
    return _fit(CONTENTS_LIST, card, stock, fitting), ()


def _choose_side(
    card: Card, container: ContainerRecord, fitting: Fitting, options: PrintOptions
) -> tuple[Fit, tuple[Finding, ...]]:
    """Take the card with the fewest faces that the long side of the container holds."""
    stocks = [find_stock(name, options.stocks) for name in CARDS[options.paper]]
    lid, end = container.lid_size, container.end_size
    if lid is None or end is None:
        return _fewest(_try_all(SIDE_CARD, card, stocks, fitting)), ()
    side = Size(max(lid.width_mm, lid.height_mm), end.height_mm)
    held = [one for one in stocks if side.holds(_as_held(SIDE_CARD, one.label))]
    fit = _fewest(_try_all(SIDE_CARD, card, held or stocks[:1], fitting))
    if held:
        return fit, ()
    where = Where(container_number=container.container_number)
    words = Sentence("Even the smallest side card is larger than the side.")
    return fit, (make_finding("card-too-large", where, words),)


def _choose_warning(
    card: Card, _container: ContainerRecord, fitting: Fitting, options: PrintOptions
) -> tuple[Fit, tuple[Finding, ...]]:
    """Take the smallest label on which no hazard needs a second one, else the fewest labels.

    A larger one is taken before a second language gives way.
    """
    stocks = [find_stock(name, options.stocks) for name in WARNINGS[options.paper]]
    groups = len(card.groups) if isinstance(card, WarningLabel) else 0
    fits = list(_try_all(WARNING_LABEL, card, stocks, fitting))
    single = [fit for fit in fits if len(fit[0]) == groups]
    return _with_second(card, single or _all_fewest(fits)), ()


def _choose_tag(
    card: Card, _container: ContainerRecord, fitting: Fitting, options: PrintOptions
) -> tuple[Fit, tuple[Finding, ...]]:
    """Take the smallest tag that says all on one face, else the one with the fewest faces.

    A larger one is taken before a second language gives way.
    """
    kind = OBJECT_TAG if card.kind == OBJECT_TAG.code else SHOULDER_TAG
    names = (TAGS if kind == OBJECT_TAG else SHOULDERS)[options.paper]
    stocks = [find_stock(name, options.stocks) for name in names]
    return _with_second(card, _all_fewest(list(_try_all(kind, card, stocks, fitting)))), ()


def _with_second(card: Card, fits: Sequence[Fit]) -> Fit:
    """Take the first fit that says all in a second language too, else the first."""
    return next((fit for fit in fits if says_all(card, fit[0])), fits[0])


def _all_fewest(fits: Sequence[Fit]) -> list[Fit]:
    """Give the fits that have no more pages than any other."""
    return [fit for fit in fits if len(fit[0]) == len(_fewest(fits)[0])]


def _fewest(fits: Iterable[Fit]) -> Fit:
    """Take the fit with the fewest pages, the first of equals."""
    return min(fits, key=lambda fit: len(fit[0]))


def _try_all(
    kind: CardKind, card: Card, stocks: Sequence[Stock], fitting: Fitting
) -> Iterable[Fit]:
    """Give the fit on each stock that takes the card; the last error where none does."""
    failure: LayoutError | SymbolError | SheetError | None = None
    found = False
    for stock in stocks:
        try:
            fit = _fit(kind, card, stock, fitting)
        except (LayoutError, SymbolError, SheetError) as error:
            failure = error
            continue
        found = True
        yield fit
    if not found and failure is not None:
        raise failure


_Choice = Callable[[Card, ContainerRecord, Fitting, PrintOptions], tuple[Fit, tuple[Finding, ...]]]
_CHOICES: dict[str, _Choice] = {
    LID_CARD.code: _choose_lid,
    END_LABEL.code: _choose_label,
    COVER_CARD.code: _choose_cover,
    CONTENTS_LIST.code: _choose_list,
    SIDE_CARD.code: _choose_side,
    WARNING_LABEL.code: _choose_warning,
    SHOULDER_TAG.code: _choose_tag,
    OBJECT_TAG.code: _choose_tag,
}
