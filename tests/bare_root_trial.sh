#!/usr/bin/env bash
# Try the first start on bare Debian systems that have Python and nothing else, as root and as
# somebody else. By hand, as root, with debootstrap installed; CI does not run it.
#
#   tests/bare_root_trial.sh [SUITE ...]          default: bookworm trixie
#
# How this machine reaches its packages comes from the environment, all of it optional:
#   TRIAL_MIRROR         the Debian mirror, where debootstrap's own choice is not the one
#   TRIAL_CERTIFICATES   a file of certificates that the registry's are signed with
#   TRIAL_PIP_INDEX      the address pip installs from
#   TRIAL_FOLDER         where the systems are unpacked, about 600 MB each
set -euo pipefail

source=$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd)
folder=${TRIAL_FOLDER:-$(mktemp -d)}
suites=("$@")
[ $# -gt 0 ] || suites=(bookworm trixie)

make_root() { # SUITE ROOT
    # The minimal base plus Python: no pip, no venv module, no Pango, no certificates.
    debootstrap --variant=minbase --include=python3 "$1" "$2" ${TRIAL_MIRROR:+"$TRIAL_MIRROR"}
    cp /etc/resolv.conf "$2/etc/resolv.conf"
    useradd --root "$2" --create-home carer
    mount -t proc proc "$2/proc"
}

copy_tree() { # ROOT PLACE
    mkdir -p "$1$2"
    tar -C "$source" --exclude=./.venv --exclude=./.syslibs --exclude=./.git \
        --exclude='*_cache' --exclude=__pycache__ -cf - . | tar -xf - -C "$1$2"
}

run_as() { # ROOT USER PLACE COMMAND...
    local root=$1 user=$2 place=$3
    shift 3
    local settings=(PATH=/usr/sbin:/usr/bin:/sbin:/bin "HOME=$place" LANG=C.UTF-8)
    if [ -n "${TRIAL_CERTIFICATES:-}" ]; then
        cp "$TRIAL_CERTIFICATES" "$root/tmp/trial.pem"
        settings+=(PIP_CERT=/tmp/trial.pem)
    fi
    [ -z "${TRIAL_PIP_INDEX:-}" ] || settings+=("PIP_INDEX_URL=$TRIAL_PIP_INDEX")
    chroot --userspec="$user" "$root" env -i "${settings[@]}" \
        sh -c 'cd "$0" && exec "$@"' "$place" "$@" </dev/null
}

try() { # ROOT USER PLACE
    local began=$SECONDS
    copy_tree "$1" "$3"
    chroot "$1" chown -R "$2" "$3"
    run_as "$1" "$2" "$3" python3 -m service --yes --help
    run_as "$1" "$2" "$3" python3 -m service print sample_records/port_merrow -o prints
    test -n "$(find "$1$3/prints" -name '*.pdf' -size +1k)"
    echo "#### $(basename "$1"), $2: $((SECONDS - began)) s"
}

for suite in "${suites[@]}"; do
    root=$folder/$suite
    make_root "$suite" "$root"
    trap 'umount "$root/proc" || true' EXIT
    # The plain user first: nothing that root installs may help.
    try "$root" carer /srv/carer/underlid
    try "$root" root /opt/underlid
    umount "$root/proc"
    trap - EXIT
done
