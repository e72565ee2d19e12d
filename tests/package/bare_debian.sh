#!/usr/bin/env bash
# bare_debian.sh FOLDER demo|tests|DEB: as root, with network. Makes a bare Debian 12 in FOLDER, or takes
# the one that is there, and shows what a new machine sees.
#   demo, tests  runs demo/run or tests/run, README's two commands, on a fresh copy of what git holds
#   DEB          installs the package by the line of docs/first-job.md, runs the example it brings, and
#                follows docs/first-job.md word for word
set -euo pipefail
folder=$1 what=$2
source=$(cd "$(dirname "$0")/../.." && pwd)
[ -e "$folder/etc/debian_version" ] || debootstrap --variant=minbase bookworm "$folder"
folder=$(realpath "$folder")
mount -t proc proc "$folder/proc" # a machine that runs has it, and with it /dev/fd
mkdir -p "$folder/dev/pts"
mount -t devpts devpts "$folder/dev/pts"
trap 'umount "$folder/dev/pts" "$folder/proc"' EXIT
[ -e "$folder/dev/fd" ] || ln -s /proc/self/fd "$folder/dev/fd"
inside() { chroot "$folder" env -i HOME=/root PATH=/usr/sbin:/usr/bin:/sbin:/bin bash -ec "$1"; }

if [ "$what" = demo ] || [ "$what" = tests ]; then
  rm -rf "$folder/root/squaredig"
  mkdir "$folder/root/squaredig"
  git -C "$source" archive HEAD | tar -x -C "$folder/root/squaredig"
  # the house rules ask git for the files of the project
  inside 'apt-get update -qq; apt-get install -y -qq git >/dev/null; cd /root/squaredig; git init -q; git add -A'
  inside "cd /root/squaredig; $what/run"
  exit
fi

deb=$(realpath "$what")
cp "$deb" "$folder/root/"
line=$(grep -m1 '^    apt install ' "$source/docs/first-job.md")
inside "apt-get update -qq; cd /root; $line <<<y" >"$folder/root/install.log" 2>&1 ||
  { cat "$folder/root/install.log"; exit 1; }
echo "installed by:$line"
status=0
inside 'rm -rf /root/alderbrook; cp -r /usr/share/doc/squaredig/examples/alderbrook /root
  cd /root; squaredig run alderbrook --quiet' >"$folder/root/demo.txt" || status=$?
[ "$status" = 1 ] || { echo "the example ends with $status"; exit 1; }
diff <(sed -n '/^\$ demo\/run/,/^done/{/^\$/d;/^done/d;p}' "$source/README.md") \
  <(sed '/^done/d' "$folder/root/demo.txt")
echo "the example says what README shows"
python3 "$source/tests/commands/readme.py" "$folder/usr/bin/squaredig" "$source" \
  --only docs/first-job.md --root "$folder"
