// Readers holds what two PDF readers made of the same pages against each other: grey images
// (PGM, raw) of the same names in two folders. Wherever one is dark, the other must have ink
// within a dot; with -within 2, within two; with -one-way, only where the first is dark. It
// ends with 1, and says where, if that is not so.
//
//	go run ./testdata/readers [-within DOTS] [-one-way] FOLDER FOLDER
package main

import (
	"bufio"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
)

func main() {
	var r rule
	flag.IntVar(&r.within, "within", 1, "how many `dots` aside ink may be")
	flag.BoolVar(&r.oneWay, "one-way", false, "the second images may have more on them")
	flag.Parse()
	if flag.NArg() != 2 {
		fmt.Fprintln(os.Stderr, "write two folders of .pgm images")
		os.Exit(2)
	}
	if err := r.compare(flag.Arg(0), flag.Arg(1)); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

// rule is how close the pages must come.
type rule struct {
	within int
	oneWay bool
}

// image is a grey page, a byte a dot: 0 is black.
type image struct {
	w, h int
	dots []byte
}

// The readers smooth edges each in its own way: a dot is surely on a line, or on a letter,
// where it is at least this dark, and surely on none where it is lighter than the other.
const (
	dark = 160
	ink  = 250
)

// few is how many dots of a page may have none of the other: a line a millimetre long has six.
// Where the white ground of a text ends within the width of a line, readers leave more or less of
// that line, as long as the text: here one of 10 mm.
const few = 60

func (r rule) compare(one, other string) error {
	files, err := filepath.Glob(filepath.Join(one, "*.pgm"))
	if err != nil {
		return err
	}
	if len(files) == 0 {
		return errors.New(one + ": there are no pages here")
	}
	others, err := filepath.Glob(filepath.Join(other, "*.pgm"))
	if err != nil {
		return err
	}
	if len(others) != len(files) {
		return fmt.Errorf("%d pages in %s and %d in %s", len(files), one, len(others), other)
	}
	var wrong []error
	worst := 0
	for _, file := range files {
		a, err := read(file)
		if err != nil {
			return err
		}
		b, err := read(filepath.Join(other, filepath.Base(file)))
		if err != nil {
			return err
		}
		n, where, err := r.differ(a, b)
		if err == nil && n > few {
			err = fmt.Errorf("%d dark dots of one have no ink of the other near; the last at %s", n, where)
		}
		if err != nil {
			wrong = append(wrong, fmt.Errorf("%s: %w", filepath.Base(file), err))
		}
		worst = max(worst, n)
	}
	if len(wrong) == 0 {
		fmt.Printf("    %s and %s: %d pages agree, dots apart at most %d; dots alone on the worst page: %d\n",
			filepath.Base(one), filepath.Base(other), len(files), r.within, worst)
	}
	return errors.Join(wrong...)
}

// read reads a raw PGM: "P5", width, height, 255, then a byte a dot.
func read(file string) (image, error) {
	f, err := os.Open(file)
	if err != nil {
		return image{}, err
	}
	defer f.Close()
	r := bufio.NewReader(f)
	var head []string
	for len(head) < 4 {
		line, err := r.ReadString('\n')
		if err != nil {
			return image{}, fmt.Errorf("%s: %w", file, err)
		}
		line, _, _ = strings.Cut(line, "#")
		head = append(head, strings.Fields(line)...)
	}
	var p image
	most := 0
	_, err = fmt.Sscan(strings.Join(head[1:], " "), &p.w, &p.h, &most)
	if err != nil || head[0] != "P5" || p.w < 1 || p.h < 1 || most != 255 {
		return image{}, errors.New(file + ": this is no raw PGM of 8 bits")
	}
	p.dots = make([]byte, p.w*p.h)
	if _, err := io.ReadFull(r, p.dots); err != nil {
		return image{}, fmt.Errorf("%s: %w", file, err)
	}
	return p, nil
}

// differ returns how many dark dots of either page have no ink of the other near, and where the
// last of them is. A page may be a dot wider or taller in one reader than in another, where its
// size is not a whole number of dots.
func (r rule) differ(a, b image) (n int, where string, err error) {
	if far(a.w, b.w) || far(a.h, b.h) {
		return 0, "", fmt.Errorf("%d x %d dots in one, %d x %d in the other", a.w, a.h, b.w, b.h)
	}
	n, where = r.alone(a, b)
	if !r.oneWay {
		if m, at := r.alone(b, a); m > 0 {
			n, where = n+m, at
		}
	}
	return n, where, nil
}

func (r rule) alone(a, b image) (n int, where string) {
	for y := range a.h {
		for x := range a.w {
			if a.dots[y*a.w+x] <= dark && !b.near(x, y, r.within) {
				n++
				where = fmt.Sprintf("%d, %d", x, y)
			}
		}
	}
	return n, where
}

func far(a, b int) bool { return a-b > 1 || b-a > 1 }

func (p image) near(x, y, within int) bool {
	for j := max(0, y-within); j <= min(p.h-1, y+within); j++ {
		for i := max(0, x-within); i <= min(p.w-1, x+within); i++ {
			if p.dots[j*p.w+i] < ink {
				return true
			}
		}
	}
	return false
}
