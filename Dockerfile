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
# The certificate is its own, which nobody but this check need take on trust.
HEALTHCHECK --interval=30s --timeout=5s --start-period=20s CMD \
    ["python", "-c", "import ssl, urllib.request as r; r.urlopen('https://127.0.0.1:8000/health', timeout=4, context=ssl._create_unverified_context())"]
# The first manager comes before: `users add NAME manage` in a container of its own, with the same
# volume. UNDERLID_ALLOWED_HOSTS names the machine that the container runs on.
CMD ["python", "-m", "service", "share"]
