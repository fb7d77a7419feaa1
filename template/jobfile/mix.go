package jobfile

import (
	"maps"
	"slices"
	"strings"

	"underlay/template/job"
	"underlay/template/jobfile/keys"
	"underlay/template/jobfile/toml"
	"underlay/template/words"
)

// mostMixed is the most rows, and the most columns, of a matrix of blocks or colours.
const mostMixed = 12

// checkMix reads the blocks and the colours of a pass that takes turns with them; false where there is
// no good block.
func (p *passReader) checkMix(s section, pass *job.Pass) bool {
	blocks, colours := s.key("blocks"), s.key("colours-in-turn")
	if e := s.key("block"); blocks.given() && e.given() {
		blocks.say("block is given too, in line %d; keep one of them", e.node.Line)
		return false
	}
	if e := s.key("colours"); colours.given() && e.given() {
		colours.say("colours is given too, in line %d; keep one of them: colours are all on the block at once, colours-in-turn whole prints of one each", e.node.Line)
	}
	good := true
	rows := [][]string{{""}}
	if blocks.given() {
		rows, good = blocks.matrix(keys.BlocksExample)
		for i, row := range rows {
			for j, name := range row {
				if p.blocks[name] == nil {
					blame(blocks.node.Items[i], blocks, j, name, slices.Sorted(maps.Keys(p.blocks)))
					good = false
				}
			}
		}
	} else if good = p.checkBlockName(s, pass); !colours.given() {
		return good
	}
	if good && blocks.given() && sameThroughout(rows) {
		name := rows[0][0]
		blocks.say("names %s alone; write block = %[1]s in its place, or a second name", words.Quote(name))
		pass.Block = p.blocks[name]
		return false
	}
	turns := [][]string{{""}}
	if colours.given() {
		var ok bool
		if turns, ok = colours.matrix(keys.ColoursExample); !ok {
			return good && pass.Block != nil
		}
		if sameThroughout(turns) {
			colours.say("names %s alone; write colours = [%[1]s] in its place, or a second colour", words.Quote(turns[0][0]))
			return good && pass.Block != nil
		}
	}
	if !good {
		return false
	}
	pass.Mix = mixed(rows, turns, func(block, colour string) job.Part {
		part := job.Part{Block: pass.Block, Colours: pass.Colours}
		if block != "" {
			part.Block = p.blocks[block]
		}
		if colour != "" {
			part.Colours = []string{colour}
		}
		return part
	})
	pass.Block, pass.Colours = pass.Mix.Parts[0].Block, pass.Mix.Parts[0].Colours
	return true
}

// mixed lays two matrices over each other, as often as it takes for both to come out whole.
func mixed(blocks, colours [][]string, part func(block, colour string) job.Part) job.Mix {
	var mix job.Mix
	known := map[[2]string]int{}
	height, width := lcm(len(blocks), len(colours)), lcm(len(blocks[0]), len(colours[0]))
	for j := range height {
		var row []int
		for i := range width {
			key := [2]string{blocks[j%len(blocks)][i%len(blocks[0])], colours[j%len(colours)][i%len(colours[0])]}
			if _, ok := known[key]; !ok {
				known[key] = len(mix.Parts)
				mix.Parts = append(mix.Parts, part(key[0], key[1]))
			}
			row = append(row, known[key])
		}
		mix.Rows = append(mix.Rows, row)
	}
	return mix
}

// lcm is the least number that both go into.
func lcm(a, b int) int {
	n := a
	for n%b != 0 {
		n += a
	}
	return n
}

func sameThroughout(rows [][]string) bool {
	for _, row := range rows {
		for _, name := range row {
			if name != rows[0][0] {
				return false
			}
		}
	}
	return true
}

// blame reports a name, the one at an index of a row, that no block has.
func blame(n *toml.Node, e entry, at int, name string, names []string) {
	if len(names) > 0 {
		entry{s: e.s, key: e.key, node: n.Items[at], inList: true}.unknownName(name, "block", names)
	}
}

// matrix reads rows of names, as many in each.
func (e entry) matrix(example string) ([][]string, bool) {
	if name, text := e.value().(string); text {
		e.wrong(words.Quote(name)+" is no list of rows", example)
		return nil, false
	}
	list, ok := e.list(example)
	if !ok {
		return nil, false
	}
	var rows [][]string
	for _, r := range list {
		if name, text := r.value().(string); text {
			e.say("%[1]s is a name, and here stand rows of names; write %[2]s = %[3]s", words.Quote(name), e.key, example)
			return nil, false
		}
		names, good := r.list(strings.SplitAfter(example[1:], "]")[0])
		var row []string
		for _, n := range names {
			name, fine := n.name("fern")
			ok = ok && fine
			row = append(row, name)
		}
		ok = ok && good
		rows = append(rows, row)
	}
	if !ok {
		return nil, false
	}
	for i, row := range rows {
		if len(row) != len(rows[0]) {
			list[i].say("this row has %d and the first %d; write as many names in every row", len(row), len(rows[0]))
			return nil, false
		}
	}
	if len(rows) > mostMixed || len(rows[0]) > mostMixed {
		e.say("more than %d names each way; write fewer, as they are repeated anyway", mostMixed)
		return nil, false
	}
	return rows, true
}
