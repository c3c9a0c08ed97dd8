#!/bin/sh
# Render and finish what is not there yet: queue.sh RENDERS PHOTOS WIDTH SAMPLES NAMES...
# NAMES are groups that share a scene, comma between the photos of a group. Start it twice with other names for two cores.
renders=$1 photos=$2 width=$3 samples=$4
shift 4
here=$(dirname "$0")
mkdir -p "$renders" "$photos"
for names in "$@"; do
  todo=""
  for name in $(echo "$names" | tr , ' '); do
    [ -f "$renders/$name.npz" ] || todo="$todo,$name"
  done
  if [ -n "$todo" ]; then
    nice -n 19 blender -b -t 1 -P "$here/render.py" -- "${todo#,}" "$width" "$samples" "$renders" 1 | grep SECONDS
  fi
  for name in $(echo "$names" | tr , ' '); do
    [ "$photos/$name.jpg" -nt "$renders/$name.npz" ] || nice -n 19 /usr/bin/python3 "$here/finish.py" "$renders" "$photos" 3648 "$name"
  done
done
