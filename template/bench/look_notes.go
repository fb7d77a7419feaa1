package bench

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"

	"underlay/geometry"
	"underlay/paper"
	"underlay/template/look"
	"underlay/template/words"
)

// notes say how large the pictures are, and what in them is not as it will be.
func (p *lookPage) notes(ratios []float64) []string {
	first := ""
	if len(ratios) == 1 {
		first = " Drawn " + ratioWords(ratios[0]) + "."
	}
	item := p.shown.Item.Item
	if item.Hem > 0 {
		first += " Dashed: the hem."
	}
	if item.Pieces.Several() {
		first += " Long and short dashes: cut here."
	}
	if len(item.Zones) > 0 {
		var names []string
		for _, z := range p.face.Item.Item.Zones {
			names = append(names, cmp.Or(words.Shown(z.Name), "a zone"))
		}
		first += " Pale grey: kept clear, " + words.InWords(slices.Compact(names)) + "."
	}
	var notes, grey []string
	if first != "" {
		notes = append(notes, first[1:])
	}
	banded, stood, hatched, pale := false, false, false, false
	for _, c := range p.colourings {
		banded = banded || look.Banded(p.job, p.face, c)
		pale = pale || look.Cloth(p.job, p.face, c) != paper.Grey(255)
		stood = stood || look.StoodFor(p.job, p.face, c)
		for _, s := range look.Swatches(p.job, p.face, c) {
			hatched = hatched || s.Hatched()
			if !s.Known && !s.Hatched() && !slices.Contains(grey, words.Quote(s.Name)) {
				grey = append(grey, words.Quote(s.Name))
			}
		}
	}
	if len(grey) > 0 {
		notes = append(notes, unknownLooks(grey))
	}
	if pale {
		notes = append(notes, "Where paint is so pale that it would not show, the cloth is drawn grey.")
	}
	if stood {
		notes = append(notes, "A block without a picture is drawn as its face with cuts that point to its top: picture below [[block]] shows its print.")
	}
	if banded {
		notes = append(notes, "Where on a block its colours go is not said: they are drawn one above the other. dabs in the pass says it.")
	}
	if hatched {
		notes = append(notes, "Hatched: neither the print of the block nor the look of its paint is known. picture below [[block]], or [[paint]], says it.")
	}
	return notes
}

// notesHeight is how high the notes come out.
func (p *lookPage) notesHeight() geometry.Length {
	h := geometry.Length(0)
	for _, n := range p.notes(slices.Repeat([]float64{12.5}, len(p.sizes()))) {
		h += geometry.Length(len(paper.Wrap(n, noteHeight, false, p.box.W())))*1.75*noteHeight + noteHeight/2
	}
	return h
}

// unknownLooks says that grey stands for some colours.
func unknownLooks(names []string) string {
	look, stands := "looks", "grey stands for it"
	if len(names) > 1 {
		look, stands = "look", "greys stand for them"
	}
	return fmt.Sprintf("How %s %s is not known, and %s: [[paint]] in the job, with name and looks, says it.", words.InWords(names), look, stands)
}

// ratioWords says how large a picture is.
func ratioWords(ratio float64) string {
	if ratio == 1 {
		return "at true size"
	}
	return "1 : " + strconv.FormatFloat(ratio, 'f', -1, 64)
}
