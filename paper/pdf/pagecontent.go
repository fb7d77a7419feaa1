package pdf

import (
	"sync"

	"underlay/paper/internal/cores"
)

// packContents returns the contents of all pages as compressed streams, made on all cores,
// and the letters they use.
func packContents(leaves []leaf, known forms) ([][]byte, lettersUsed) {
	type tools struct {
		deflater *deflater
		content  []byte
	}
	kits := sync.Pool{New: func() any { return &tools{deflater: newDeflater()} }}
	contents, letters := make([][]byte, len(leaves)), make([]lettersUsed, len(leaves))
	cores.Each(len(leaves), func(i int) {
		kit := kits.Get().(*tools)
		defer kits.Put(kit)
		kit.content = leaves[i].appendContent(kit.content[:0], known, &letters[i])
		contents[i] = kit.deflater.stream(nil, kit.content)
	})
	var used lettersUsed
	for i := range letters {
		used.add(&letters[i])
	}
	return contents, used
}

// appendContent writes what is on the page; it adds to used the letters that are.
func (s leaf) appendContent(b []byte, known forms, used *lettersUsed) []byte {
	for _, v := range s.page.Views {
		c := &content{out: b, view: v, unit: s.scale(), height: s.size().Ht, forms: known, used: used}
		c.draw()
		b = c.out
	}
	return b
}
