package bench

import (
	"fmt"
	"math"
	"strconv"

	"underlay/geometry"
	"underlay/paper"
	"underlay/template/guide"
	"underlay/template/look"
	"underlay/template/plan"
	"underlay/template/say"
	"underlay/template/words"
)

// Entry is a line of the contents of a document.
type Entry struct {
	Name  string
	Page  int // the first, counted from 1 on the page after the set's own
	Pages int
	Inner bool // it belongs to the last that does not
}

// Set makes the first page of a set: all items as they will look, what to bring, and where in the
// document what is found. Sheets is how many pages are at true size, on the job's paper.
func Set(p *plan.Plan, contents []Entry, sheets int) []paper.Page {
	// Contents name page numbers, which follow from how many pages come first.
	pages := setPages(p, contents, sheets, 1)
	if n := len(pages); n > 1 {
		pages = setPages(p, contents, sheets, n)
	}
	return pages
}

func setPages(p *plan.Plan, contents []Entry, sheets, before int) []paper.Page {
	t := plan.NewTotals(p)
	f := newFlow(p.Job)
	under := fmt.Sprintf("%s, %s", words.Counted(t.Pieces, "piece", "pieces"), words.Counted(t.Prints, "print", "prints"))
	if t.Bench > 0 {
		under += ", " + say.Time(t.Bench) + " at the bench"
	}
	f.Title(words.UpperFirst(p.Job.Title), under+".")
	most := f.Room() * 0.42
	f.Figure(lineUpHeight(p, f.Width(), most), func(box geometry.Rect) []paper.View { return lineUp(p, box, most) })
	bring(f, p, t, sheets)
	f.Heading("In these papers")
	var rows [][]string
	for _, e := range contents {
		name := words.UpperFirst(e.Name)
		if e.Inner {
			name = "– " + e.Name
		}
		rows = append(rows, []string{name, numbers(before+e.Page, before+e.Page+e.Pages-1)})
	}
	f.Table([]string{"", "page"}, rows, 1)
	return f.Pages()
}

// The items in a row, with their names.
const (
	lineUpGap  = 5 * geometry.Millimetre
	nameRow    = 5 * geometry.Millimetre
	mostLineUp = 24 // pictures; of more items only the names are told
)

// lineUpGrid returns how many faces stand beside each other, and how large each may be, so that
// all go into a width and a height.
func lineUpGrid(n int, width, height geometry.Length) (columns int, cell geometry.Size) {
	for columns = 2; ; columns++ {
		rows := (n + columns - 1) / columns
		cell.W = (width - geometry.Length(columns-1)*lineUpGap) / geometry.Length(columns)
		cell.H = min(cell.W+nameRow, height/geometry.Length(rows))
		if geometry.Length(rows)*cell.H <= height+geometry.Tolerance && cell.H >= cell.W*0.75 || columns >= n || columns >= 8 {
			return columns, cell
		}
	}
}

// lineUpFaces are the faces shown: of each item those that differ.
func lineUpFaces(p *plan.Plan) []plan.FacePlan {
	var faces []plan.FacePlan
	for _, ip := range p.Items {
		faces = append(faces, ip.Faces()...)
	}
	return faces[:min(len(faces), mostLineUp)]
}

// lineUpRows returns how high each row of pictures is: as its highest.
func lineUpRows(faces []plan.FacePlan, columns int, cell geometry.Size) []geometry.Length {
	var rows []geometry.Length
	for i, face := range faces {
		if i%columns == 0 {
			rows = append(rows, 0)
		}
		cloth := face.Item.Area.Cloth
		rows[len(rows)-1] = max(rows[len(rows)-1], min(cell.H-nameRow-2, cell.W*cloth.H()/cloth.W()))
	}
	return rows
}

func lineUpHeight(p *plan.Plan, width, most geometry.Length) geometry.Length {
	faces := lineUpFaces(p)
	columns, cell := lineUpGrid(len(faces), width, most)
	var all geometry.Length
	for _, h := range lineUpRows(faces, columns, cell) {
		all += h + nameRow + 2
	}
	return all
}

// lineUp draws all faces side by side as they will look, each as large as goes in, standing on its
// name. Most is the height they may take.
func lineUp(p *plan.Plan, box geometry.Rect, most geometry.Length) []paper.View {
	faces := lineUpFaces(p)
	columns, cell := lineUpGrid(len(faces), box.W(), most)
	rows := lineUpRows(faces, columns, cell)
	names := &paper.Drawing{Bounds: box}
	views := []paper.View{{Drawing: names, Area: box, At: box.Min}}
	at := box.Min
	for i, face := range faces {
		if i%columns == 0 && i > 0 {
			at = geometry.Pt(box.Min.X, at.Y+rows[i/columns-1]+nameRow+2)
		}
		picture := geometry.RectAt(at, geometry.Size{W: cell.W, H: rows[i/columns]})
		cloth := face.Item.Area.Cloth
		picture.Min.Y = picture.Max.Y - min(picture.H(), picture.W()*cloth.H()/cloth.W())
		name := face.Label()
		if q := face.Item.Item.Quantity * face.Item.Item.Pieces.Count(); q > 1 {
			name = strconv.Itoa(q) + " × " + name
		}
		names.Write(paper.Label{Text: paper.Shorten(words.UpperFirst(name), 2.5, false, cell.W), At: geometry.Pt(at.X, picture.Max.Y+3.5), Anchor: paper.AnchorBottomLeft, Height: 2.5})
		views = append(views, look.Hero(p.Job, face, picture))
		at.X += cell.W + lineUpGap
	}
	return views
}

// bring says what to have at hand: pieces, blocks, paint, tape, and paper where sheets are known.
func bring(f *paper.Flow, p *plan.Plan, t plan.Totals, sheets int) {
	j := p.Job
	f.Heading("What to bring")
	var pieces, blocks, paints []string
	for _, ip := range p.Items {
		if ip.Item.Pieces.Several() {
			pieces = append(pieces, clothsOf(j.Units, ip))
			continue
		}
		pieces = append(pieces, fmt.Sprintf("%d × %s", ip.Item.Quantity, ip.Item.Name))
	}
	for _, b := range j.Blocks {
		if len(uses(p, b)) > 0 {
			blocks = append(blocks, guide.Words(b, j.Units))
		}
	}
	for _, c := range byColour(t) {
		text := fmt.Sprintf("%s for %s", c.Colour, words.Counted(c.Prints, "print", "prints"))
		if c.Paint > 0 {
			text += ", at least " + say.Paint(c.Paint)
		}
		paints = append(paints, text)
	}
	rows := [][]string{}
	add := func(what string, list ...string) {
		for i, l := range list {
			if i > 0 {
				what = ""
			}
			rows = append(rows, []string{what, l})
		}
	}
	add("cloth", pieces...)
	add("blocks", blocks...)
	add("paint", paints...)
	if m := tapeMetres(p); m > 0 {
		add("masking tape", fmt.Sprintf("%s m, with new tape for each piece; and clear tape for the joins", plainFigure(m)))
	}
	if sheets > 0 {
		add("paper", fmt.Sprintf("%s of %s for the guides", words.Counted(sheets, "sheet", "sheets"), j.Paper.Stock.Name))
	}
	add("besides", "padded mat, pad or brush for the paint, scrap to practise on, damp rag, iron")
	f.Table([]string{"", ""}, rows)
	for i, c := range t.Colourings {
		if i == 0 {
			f.Heading("Colourways")
		}
		f.Text(words.UpperFirst(c.Item.Name) + ", " + say.ColouringTotal(c) + ".")
	}
	if j.Printing.HasPaintCover {
		shared := "shared evenly between the colours of a pass"
		if dabbedAnywhere(p) {
			shared = "by the part of the face that a colour is dabbed on, else shared evenly between the colours of a pass"
		}
		f.Quiet("Paint: face x inked share x your own figure for paint-cover, " + shared + "; what stays on pad and brush comes on top.")
	} else {
		f.Quiet("For amounts of paint, give paint-cover under [printing], and a picture or inked for each block.")
	}
	if j.Printing.HasSecondsPrint {
		text := fmt.Sprintf("Time: %s at your own pace of %s seconds a print", say.Time(t.Bench), plainFigure(j.Printing.SecondsAPrint))
		if j.Printing.HasSecondsColour {
			text += fmt.Sprintf(" and %s more for each colour after the first", plainFigure(j.Printing.SecondsAColour))
		}
		f.Quiet(text + "; setting up, cleaning and drying come on top.")
	}
}

// byColour adds up what the blocks take of each colour, in the order of the job.
func byColour(t plan.Totals) []plan.Total {
	var all []plan.Total
	at := map[string]int{}
	for _, r := range t.Rows {
		i, known := at[r.Colour]
		if !known {
			i = len(all)
			at[r.Colour] = i
			all = append(all, plan.Total{Colour: r.Colour})
		}
		all[i].Prints += r.Prints
		all[i].Paint += r.Paint
	}
	return all
}

// tapeMetres is how much masking tape all pieces take, in metres: for each tape line of each piece
// and face a stretch over the cloth from tick to tick, a hand's breadth longer at both ends.
func tapeMetres(p *plan.Plan) float64 {
	const beyond = 80 * geometry.Millimetre
	var all geometry.Length
	for _, ip := range p.Items {
		cloth := ip.WholeCloth()
		for _, seen := range ip.Cloths() {
			for _, pp := range seen.OnCloth().Passes {
				if pp.Tape == nil {
					continue
				}
				one := geometry.Length(len(pp.Tape.Across))*(cloth.H()+2*beyond) + geometry.Length(len(pp.Tape.Down))*(cloth.W()+2*beyond)
				all += one * geometry.Length(ip.Item.Quantity*len(seen.PrintedOn(pp.Pass)))
			}
		}
	}
	return math.Ceil(float64(all/geometry.Metre)*2) / 2
}

func plainFigure(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }
