package main

import (
	"maps"
	"slices"

	"underlay/geometry"
	"underlay/template/job"
	"underlay/template/plan"
)

// The types below are the plan as fit --json writes it. What has no meaning for a repeat is
// left out.

type jsonPlan struct {
	Title string     `json:"title"`
	Items []jsonItem `json:"items"`
}

type jsonItem struct {
	Name       string          `json:"name"`
	Shape      string          `json:"shape"`
	Width      mm              `json:"width_mm"`
	Height     mm              `json:"height_mm"`
	Quantity   int             `json:"quantity"`
	Moves      *jsonMoves      `json:"moves,omitempty"`
	Faces      []jsonFace      `json:"faces,omitempty"`
	Pieces     *jsonPieces     `json:"pieces,omitempty"`
	Colourways []jsonColourway `json:"colourways,omitempty"`
	Passes     []jsonPass      `json:"passes"`
	Overlaps   []jsonOverlap   `json:"overlaps,omitempty"`
}

// jsonOverlap is a pass of which some prints lie on those of an earlier one.
type jsonOverlap struct {
	Pass   string `json:"pass"`
	On     string `json:"on"`
	Prints int    `json:"prints"`
	// Faces are those of the pass, where the item's faces differ.
	Faces []string `json:"faces,omitempty"`
}

// jsonMoves is of a cloth that is moved along: from laying to laying by one stretch.
type jsonMoves struct {
	Axis    string `json:"axis"`
	Stretch mm     `json:"stretch_mm"`
	Times   int    `json:"times"`
}

// jsonPieces is of a cloth with several pieces on it: width and height of the item, its prints and
// tape lines, and the counts of its passes, are then of the whole cloth; choices and near misses of
// one piece.
type jsonPieces struct {
	Across int      `json:"across"`
	Down   int      `json:"down"`
	Apart  mm       `json:"apart_mm"`
	Width  mm       `json:"width_mm"`
	Height mm       `json:"height_mm"`
	Cuts   jsonCuts `json:"cuts_mm"`
}

// jsonCuts are x of the cuts that run up and down, and y of those across.
type jsonCuts struct {
	Across []mm `json:"across"`
	Down   []mm `json:"down"`
}

// jsonColourway is so many pieces of an item, or of one of its faces, in other colours.
type jsonColourway struct {
	Name     string     `json:"name"`
	Quantity int        `json:"quantity"`
	Face     string     `json:"face,omitempty"`
	Swap     []jsonSwap `json:"swap"`
}

type jsonSwap struct {
	Colour  string `json:"colour"`
	Becomes string `json:"becomes"`
}

// jsonFace is a face that shows the cloth otherwise than the first.
type jsonFace struct {
	Name     string `json:"name"`
	Mirrored bool   `json:"mirrored"`
}

// jsonPass is a pass; where the faces of its item differ there is one for each way in which they
// show the cloth, the first face's first, with its own prints and the faces they are on.
type jsonPass struct {
	Name       string         `json:"name"`
	Faces      []string       `json:"faces,omitempty"`
	Block      string         `json:"block,omitempty"`
	Blocks     []string       `json:"blocks,omitempty"`
	Repeat     string         `json:"repeat"`
	Count      int            `json:"count"`
	Columns    int            `json:"columns,omitempty"`
	Rows       int            `json:"rows,omitempty"`
	Centre     *jsonCentre    `json:"centre,omitempty"`
	Gap        jsonSpacing    `json:"gap_mm"`
	Pitch      jsonSpacing    `json:"pitch_mm"`
	Border     jsonEdges      `json:"border_mm"`
	Serves     *jsonServes    `json:"serves_mm,omitempty"`
	Choices    []jsonChoice   `json:"choices"`
	NearMisses []jsonNearMiss `json:"near_misses,omitempty"`
	Tape       *jsonTape      `json:"tape_mm,omitempty"`
	Wanted     *jsonWanted    `json:"wanted,omitempty"`
	Prints     []jsonPrint    `json:"prints"`
}

type jsonCentre struct {
	Across job.Centring `json:"across,omitempty"`
	Down   job.Centring `json:"down,omitempty"`
}

type jsonSpacing struct {
	Across mm `json:"across"`
	Down   mm `json:"down"`
}

type jsonEdges struct {
	Top    mm `json:"top"`
	Right  mm `json:"right"`
	Bottom mm `json:"bottom"`
	Left   mm `json:"left"`
}

// jsonServes are ranges: the least size, and the size from which one more print would fit; null
// where none would.
type jsonServes struct {
	Width  []*mm `json:"width,omitempty"`
	Height []*mm `json:"height,omitempty"`
}

// jsonWanted is what exactly so many prints take; null for what cannot do it.
type jsonWanted struct {
	Columns int            `json:"columns"`
	Rows    int            `json:"rows"`
	Cloth   *jsonSize      `json:"cloth_mm"`
	Gap     jsonWantedGaps `json:"gap_mm"`
	Block   *jsonSize      `json:"block_mm"`
}

// jsonWantedGaps are ranges, from and to; of one print to is null, as there is no most.
type jsonWantedGaps struct {
	Across []*mm `json:"across"`
	Down   []*mm `json:"down"`
}

type jsonChoice struct {
	Across  job.Centring `json:"across,omitempty"`
	Down    job.Centring `json:"down,omitempty"`
	Count   int          `json:"count"`
	Columns int          `json:"columns,omitempty"`
	Rows    int          `json:"rows,omitempty"`
	Border  jsonEdges    `json:"border_mm"`
	Taken   bool         `json:"taken"`
}

// jsonNearMiss has null for a change that cannot bring one more print.
type jsonNearMiss struct {
	Axis   string `json:"axis"`
	Cloth  *mm    `json:"cloth_mm"`
	Border *mm    `json:"border_mm"`
	Gap    *mm    `json:"gap_mm"`
	Block  *mm    `json:"block_mm"`
}

type jsonTape struct {
	Across []mm `json:"across"`
	Down   []mm `json:"down"`
}

type jsonPrint struct {
	Number    int       `json:"number"`
	Block     string    `json:"block,omitempty"`
	Colours   []string  `json:"colours,omitempty"`
	X         mm        `json:"x_mm"`
	Y         mm        `json:"y_mm"`
	Turn      mm        `json:"turn_deg"`
	TouchDown jsonPoint `json:"touch_down"`
	// Of a cloth that is moved along: the laying, from 1, and the number on the guide.
	Stretch   int `json:"stretch,omitempty"`
	InStretch int `json:"number_in_stretch,omitempty"`
	// On a cloth of several pieces: the piece, from 1, and the number on the guide.
	Piece   int `json:"piece,omitempty"`
	InPiece int `json:"number_in_piece,omitempty"`
}

type jsonPoint struct {
	X mm `json:"x_mm"`
	Y mm `json:"y_mm"`
}

// planJSON is a plan, and what so many prints wanted would take; none are, where these are 0.
func planJSON(plan *plan.Plan, wanted job.Counts) jsonPlan {
	out := jsonPlan{Title: plan.Job.Title}
	for _, ip := range plan.Items {
		it, size := ip.Item, ip.Area.Cloth.Size()
		item := jsonItem{
			Name: it.Name, Shape: string(it.Shape), Width: length(size.W), Height: length(size.H),
			Quantity: it.Quantity, Passes: []jsonPass{},
		}
		if it.Pieces.Several() {
			putPieces(&item, ip)
		}
		for _, c := range it.Colourways {
			way := jsonColourway{Name: c.Name, Quantity: c.Quantity, Face: c.Face}
			for _, colour := range slices.Sorted(maps.Keys(c.Swap)) {
				way.Swap = append(way.Swap, jsonSwap{colour, c.Swap[colour]})
			}
			item.Colourways = append(item.Colourways, way)
		}
		for _, cloth := range ip.Cloths() {
			if m := cloth.Moves; m != nil && item.Moves == nil {
				item.Moves = &jsonMoves{axisWord(m.Down), length(m.Stretch), m.Times}
			}
			faces := cloth.PrintedOn
			if len(ip.Turned) == 0 {
				faces = func(*job.Pass) []string { return nil }
			}
			for _, pp := range cloth.OnCloth().Passes {
				pass := passJSON(pp)
				if it.Pieces.Several() {
					putOnPieces(&pass, pp, it.Pieces)
				}
				pass.Faces = faces(pp.Pass)
				if wanted != (job.Counts{}) {
					pass.Wanted = wantedJSON(pp, wanted)
				}
				item.Passes = append(item.Passes, pass)
			}
			for _, o := range cloth.Overlaps {
				item.Overlaps = append(item.Overlaps, jsonOverlap{o.Pass.Pass.Name, o.On.Pass.Name, o.Prints, faces(o.Pass.Pass)})
			}
			if cloth.Area.Turned {
				for _, name := range cloth.FaceNames {
					item.Faces = append(item.Faces, jsonFace{name, true})
				}
			}
		}
		out.Items = append(out.Items, item)
	}
	return out
}

func passJSON(p *plan.PassPlan) jsonPass {
	c := p.Choice()
	out := jsonPass{
		Name: p.Pass.Name, Block: p.Pass.Block.Name, Repeat: string(p.Pass.Repeat),
		Count: len(p.Prints), Columns: c.Columns, Rows: c.Rows,
		Gap: spacingJSON(c.Gap), Pitch: spacingJSON(c.Pitch), Border: edgesJSON(c.Border), Centre: centreJSON(c),
	}
	if a, d := p.Serves(); a != nil || d != nil {
		out.Serves = &jsonServes{servesJSON(a), servesJSON(d)}
	}
	for i, c := range p.Choices {
		out.Choices = append(out.Choices, jsonChoice{
			Across: c.Across, Down: c.Down, Count: c.Count, Columns: c.Columns, Rows: c.Rows,
			Border: edgesJSON(c.Border), Taken: i == p.Taken,
		})
	}
	for _, m := range p.NearMisses() {
		out.NearMisses = append(out.NearMisses, jsonNearMiss{axisWord(m.Down), orNull(m.Cloth), orNull(m.Border), orNull(m.Gap), orNull(m.Block)})
	}
	if p.Tape != nil {
		out.Tape = &jsonTape{lengths(p.Tape.Across), lengths(p.Tape.Down)}
	}
	several := p.Blocks()
	if len(several) > 1 {
		for _, b := range several {
			out.Blocks = append(out.Blocks, b.Name)
		}
	}
	if !p.Pass.Mix.None() && len(several) > 1 {
		out.Block = ""
	}
	for _, q := range p.Prints {
		block := ""
		if len(several) > 1 {
			block = q.Block.Name
		}
		out.Prints = append(out.Prints, jsonPrint{
			Number: q.Number, Block: block, Colours: coloursJSON(p.Pass, q.Part), X: length(q.Origin.X), Y: length(q.Origin.Y), Turn: mm(q.Turn),
			TouchDown: jsonPoint{length(q.TouchDown.X), length(q.TouchDown.Y)},
			Stretch:   q.Stretch, InStretch: p.NumberInStretch(q),
		})
	}
	return out
}

// coloursJSON are the colours of a print of a pass whose colours take turns.
func coloursJSON(p *job.Pass, part int) []string {
	for _, q := range p.Mix.Parts {
		if !slices.Equal(q.Colours, p.Mix.Parts[part].Colours) {
			return p.Mix.Parts[part].Colours
		}
	}
	return nil
}

// centreJSON says what sits on the centre lines; nil where the repeat has no such choice.
func centreJSON(c plan.Choice) *jsonCentre {
	if c.Across == "" && c.Down == "" {
		return nil
	}
	return &jsonCentre{c.Across, c.Down}
}

func spacingJSON(s job.Spacing) jsonSpacing {
	return jsonSpacing{length(s.Across), length(s.Down)}
}

func edgesJSON(e geometry.Edges) jsonEdges {
	return jsonEdges{length(e.Top), length(e.Right), length(e.Bottom), length(e.Left)}
}

func servesJSON(s *plan.Serves) []*mm {
	if s == nil {
		return nil
	}
	return rangeJSON(s.Least, s.Below, s.Endless())
}

func rangeJSON(from, to geometry.Length, endless bool) []*mm {
	if endless {
		return []*mm{orNull(&from), nil}
	}
	return []*mm{orNull(&from), orNull(&to)}
}

// wantedJSON is what so many prints take; null for a repeat without rows and columns.
func wantedJSON(p *plan.PassPlan, n job.Counts) *jsonWanted {
	w, ok := p.Wanted(n)
	if !ok {
		return nil
	}
	gap := func(g *plan.GapSpan) []*mm {
		if g == nil {
			return nil
		}
		return rangeJSON(g.Least, g.Most, g.Endless())
	}
	return &jsonWanted{n.Across, n.Down, sizeJSON(w.Cloth), jsonWantedGaps{gap(w.GapAcross), gap(w.GapDown)}, sizeJSON(w.Block)}
}

func sizeJSON(s *geometry.Size) *jsonSize {
	if s == nil {
		return nil
	}
	return &jsonSize{length(s.W), length(s.H)}
}

func orNull(l *geometry.Length) *mm {
	if l == nil {
		return nil
	}
	v := length(*l)
	return &v
}

// axisWord names the way across or down.
func axisWord(down bool) string {
	if down {
		return "down"
	}
	return "across"
}
