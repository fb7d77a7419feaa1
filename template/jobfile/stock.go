package jobfile

import (
	"errors"
	"strings"

	"underlay/paper"
	"underlay/template/words"
)

// ParseStock reads a paper as paper.ParseStock does. Where no paper has that name, but one has a
// name much like it, the error says so first.
func ParseStock(name string) (paper.Stock, error) {
	stock, err := paper.ParseStock(name)
	unknown, ok := errors.AsType[paper.UnknownStock](err)
	if !ok {
		return stock, err
	}
	known := []string{"one sheet"}
	for _, s := range paper.Stocks() {
		known = append(known, s.Name)
	}
	near, ok := words.Nearest(name, known)
	if first, _, _ := strings.Cut(strings.TrimSpace(name), " "); !ok {
		if _, roll := words.Nearest(first, []string{"roll"}); roll {
			near = "roll 610 mm"
		}
	}
	return stock, errors.New(unknown.Words(near))
}
