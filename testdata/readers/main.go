// Readers holds what two PDF readers made of the same pages against each other: grey images
// (PGM, raw) of the same names in two folders. Wherever one is dark, the other must have ink
// within a dot.
//
//	go run ./testdata/readers FOLDER FOLDER
package main

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
)

func main() {
	if len(os.Args) != 3 {
		fmt.Fprintln(os.Stderr, "write two folders of .pgm images")
		os.Exit(2)
	}
	if err := compare(os.Args[1], os.Args[2]); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
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
const few = 2

func compare(one, other string) error {
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
		n, where, err := differ(a, b)
		if err == nil && n > few {
			err = fmt.Errorf("%d dark dots of one have no ink of the other within a dot; the last at %s", n, where)
		}
		if err != nil {
			wrong = append(wrong, fmt.Errorf("%s: %w", filepath.Base(file), err))
		}
		worst = max(worst, n)
	}
	if len(wrong) == 0 {
		fmt.Printf("  %d pages agree to a dot; on the worst %d dots stand alone\n", len(files), worst)
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

// differ returns how many dark dots of either page have no ink of the other within one dot. A
// page may be a dot wider or taller in one reader than in another, where its size is not a
// whole number of dots.
func differ(a, b image) (n int, where string, err error) {
	if far(a.w, b.w) || far(a.h, b.h) {
		return 0, "", fmt.Errorf("%d x %d dots in one, %d x %d in the other", a.w, a.h, b.w, b.h)
	}
	for _, pair := range [2][2]image{{a, b}, {b, a}} {
		for y := range pair[0].h {
			for x := range pair[0].w {
				if pair[0].dots[y*pair[0].w+x] <= dark && !pair[1].near(x, y) {
					n++
					where = fmt.Sprintf("%d, %d", x, y)
				}
			}
		}
	}
	return n, where, nil
}

func far(a, b int) bool { return a-b > 1 || b-a > 1 }

func (p image) near(x, y int) bool {
	for j := max(0, y-1); j <= min(p.h-1, y+1); j++ {
		for i := max(0, x-1); i <= min(p.w-1, x+1); i++ {
			if p.dots[j*p.w+i] < ink {
				return true
			}
		}
	}
	return false
}
