package pdf

import "testing"

func TestLettersInOrderAndOnce(t *testing.T) {
	var page, all lettersUsed
	for _, r := range "fern 3 é fern ½" {
		page.of(true).add(r)
	}
	page.of(false).add('z')
	all.of(false).add('a')
	all.add(&page)
	all.add(&page)
	if got, want := all.of(true).String(), " 3efnr½é"; got != want {
		t.Errorf("bold: %q, want %q", got, want)
	}
	if got, want := all.of(false).String(), "az"; got != want {
		t.Errorf("regular: %q, want %q", got, want)
	}
}
