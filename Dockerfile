# Written to the same steps as `python3 -m service`, which were tried on Debian 12 and 13.
# This file itself has not been built yet: no container engine was at hand.
FROM python:3.11-slim-bookworm

# Pango and what it needs, no fonts: all that is printed is set in the fonts under templates/fonts.
RUN apt-get update \
    && apt-get install -y --no-install-recommends \
        libpango-1.0-0 libpangoft2-1.0-0 libharfbuzz-subset0 \
    && rm -rf /var/lib/apt/lists/*

WORKDIR /underlid
COPY . .
# The first start makes .venv from the lock; every later one steps aside at once.
RUN python -m service --help

RUN useradd --create-home --home-dir /var/lib/underlid underlid
USER underlid
ENV UNDERLID_DATA=/var/lib/underlid/data
VOLUME /var/lib/underlid/data

EXPOSE 8000
HEALTHCHECK --interval=30s --timeout=5s --start-period=20s CMD \
    ["python", "-c", "import urllib.request as r; r.urlopen('http://127.0.0.1:8000/health', timeout=4)"]
CMD ["python", "-m", "service", "serve", "--host", "0.0.0.0"]
