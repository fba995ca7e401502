"""What others hold of the store without knowing its library: the engine, and a connection."""

from __future__ import annotations

from sqlalchemy import Connection, Engine

__all__ = ["Connection", "Engine"]
