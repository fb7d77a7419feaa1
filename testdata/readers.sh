#!/usr/bin/env bash
# Opens the papers at true size of every example in readers that share no code with ours, where
# they are installed: poppler (pdftoppm), mupdf (mutool), ghostscript (gs); and has qpdf look the file over. All
# pages are drawn at 150 dots an inch and must agree. What is not installed is named and left
# out.
#
# The bench sheets are left out: their small pictures have white grounds over lines, a hair from
# each other, which readers smooth each in its own way.
#
# poppler and mupdf agree to a dot in everything. ghostscript puts every letter on whole dots:
# with letters it must agree within two dots, its lines alone within one.
set -euo pipefail
cd "$(dirname "$0")/.."

out=$(mktemp -d)
trap 'rm -rf "$out"' EXIT
have() {
  command -v "$1" >/dev/null && return
  echo "  $1 ($2) is not installed: left out"
  return 1
}
poppler= mupdf= gs= qpdf=
have pdftoppm poppler && poppler=yes
have mutool mupdf && mupdf=yes
have gs ghostscript && gs=yes
have qpdf qpdf && qpdf=yes
if [ -z "$poppler$mupdf$gs$qpdf" ]; then
  echo "  no other reader is installed: nothing was compared"
  exit 0
fi

# quiet runs a command that must end well and say nothing.
quiet() {
  if ! "$@" >"$out/said" 2>&1; then
    echo "$* failed:"
    cat "$out/said"
    exit 1
  fi
  # Some builds of mupdf know no colour profiles, and say so before they look at the file.
  if grep -v -e '^warning: ICC support is not available$' "$out/said"; then
    echo "said by: $*"
    exit 1
  fi
}

go build -o "$out/underlay" ./cmd/underlay
go build -o "$out/readers" ./testdata/readers
for job in examples/*.toml; do
  name=$(basename "$job" .toml)
  pdf="$out/$name.pdf"
  "$out/underlay" draw "$job" --parts guide,swatch,tags -o "$pdf" >/dev/null 2>&1
  echo "  $name"
  rm -rf "$out"/pages
  mkdir -p "$out"/pages/{poppler,mupdf,gs,lines}
  if [ -n "$qpdf" ]; then
    if ! qpdf --check "$pdf" >"$out/said" 2>&1 || grep -qi warning "$out/said"; then
      cat "$out/said"
      exit 1
    fi
  fi
  if [ -n "$poppler" ]; then
    quiet pdftoppm -r 150 -gray "$pdf" "$out/pages/poppler/page"
    # It writes as many figures as the last page's number has.
    for f in "$out"/pages/poppler/page-?.pgm; do
      if [ -e "$f" ]; then mv "$f" "${f/page-/page-0}"; fi
    done
  fi
  if [ -n "$mupdf" ]; then
    quiet mutool draw -q -r 150 -c gray -F pgm -o "$out/pages/mupdf/page-%02d.pgm" "$pdf"
  fi
  if [ -n "$gs" ]; then
    smooth="-q -dSAFER -dBATCH -dNOPAUSE -sDEVICE=pgmraw -r150 -dGraphicsAlphaBits=4 -dTextAlphaBits=4"
    quiet gs $smooth -sOutputFile="$out/pages/gs/page-%02d.pgm" "$pdf"
    quiet gs $smooth -dFILTERTEXT -sOutputFile="$out/pages/lines/page-%02d.pgm" "$pdf"
  fi
  if [ -n "$poppler" ] && [ -n "$mupdf" ]; then
    "$out/readers" "$out/pages/poppler" "$out/pages/mupdf"
  fi
  for other in ${poppler:+poppler} ${mupdf:+mupdf}; do
    if [ -n "$gs" ]; then
      "$out/readers" -one-way "$out/pages/lines" "$out/pages/$other"
      "$out/readers" -within 2 "$out/pages/gs" "$out/pages/$other"
    fi
  done
done
