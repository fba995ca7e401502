"""The photos of a run: as fine as the pages show them, and their bytes for whoever composes."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from service.pages.page import Page, PictureBlock
from service.pipeline.ready import Workshop
from service.render.pictures.prepare import PhotoSource, prepare_photos, restorer
from service.render.pictures.source import PictureSource, picture_source, restoring_source
from service.render.pictures.thumbnails import Grade, Thumbnails, is_finer_needed


class Photos:
    """Thumbnails by the photo's name; those that a page shows large are made again finer.

    Cards that were inked before name the coarser ones, so these stay in use.
    """

    def __init__(
        self,
        thumbnails: Mapping[str, Thumbnails],
        sources: Mapping[str, PhotoSource],
        workshop: Workshop,
    ) -> None:
        """Begin with what was made when the photos arrived."""
        self._thumbnails = dict(thumbnails)
        self._outgrown: list[tuple[str, Thumbnails]] = []
        self._sources = sources
        self._workshop = workshop

    @property
    def thumbnails(self) -> Mapping[str, Thumbnails]:
        """What there is now."""
        return self._thumbnails

    def refine_for(self, pages: Iterable[Page]) -> None:
        """Make finer thumbnails of the photos that these pages show larger than usual."""
        wanted = {
            block.photo: self._sources[block.photo]
            for page in pages
            for block in page.blocks
            if isinstance(block, PictureBlock) and self._is_too_coarse(block)
        }
        if wanted:
            # A photo that has gone meanwhile was told when it was prepared; the coarse one serves.
            finer, _ = prepare_photos(
                wanted,
                grade=Grade.LARGE,
                cache_folder=self._workshop.cache_folder,
                workers=self._workshop.decoders,
            )
            self._outgrown += [(name, self._thumbnails[name]) for name in finer]
            self._thumbnails.update(finer)

    def pictures(self) -> PictureSource:
        """Give what reads the JPEG of a thumbnail by its hash, as it stands."""
        return picture_source(photo for _, photo in self._in_use())

    def restored_pictures(self) -> PictureSource:
        """Give what reads it, checks it, and makes a damaged one anew."""
        used = self._in_use()
        restore = restorer(
            used,
            self._sources,
            cache_folder=self._workshop.cache_folder,
            workers=self._workshop.decoders,
        )
        return restoring_source((photo for _, photo in used), restore)

    def _in_use(self) -> list[tuple[str, Thumbnails]]:
        return [*self._outgrown, *self._thumbnails.items()]

    def _is_too_coarse(self, block: PictureBlock) -> bool:
        thumbnails = self._thumbnails.get(block.photo)
        return thumbnails is not None and is_finer_needed(
            thumbnails, block.rect.width_mm, block.rect.height_mm
        )
