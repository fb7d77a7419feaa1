package plan

import (
	"fmt"
	"math"

	"underlay/geometry"
	"underlay/template/job"
	"underlay/template/words"
)

// Choice is one way of setting out a pass: what sits on the centre lines, and what that gives.
type Choice struct {
	Across, Down job.Centring // "" where the repeat has no such choice
	Count        int
	// Columns and Rows are 0 where the repeat has no single count of them: brick and honeycomb
	// have rows, half-drop has columns, a diagonal, a frame and rings have neither.
	Columns, Rows int
	RowCounts     []int // prints in each row, from the top; none where there are no rows
	ColumnCounts  []int // prints in each column, from the left; none where there are no columns
	// Runs are the sides of a frame in the order top, right, bottom, left, or the rings from
	// the outermost.
	Runs []Run
	// Gap and Pitch across and down. Of a frame: along the sides that run across, and along
	// those that run down. Of rings: the least from print to print, and from ring to ring. Of
	// a cone: on its narrowest row, and along the slope.
	Gap, Pitch job.Spacing
	Border     geometry.Edges // plain cloth left inside the bounds of the item
	Seam       int            // prints of a shade that lie across its seam
	// Begins is the column and row of a matrix of parts, counted from 0, that stand top left.
	Begins  geometry.Site
	start   geometry.Site // those of its place on the centre, or next after it
	dropped int           // prints left out because they would not lie wholly on the area
}

// Run is a line of prints that goes along a side, or round a ring.
type Run struct {
	Name  string // "top", "right", "bottom", "left"; "ring 1", the outermost; "middle"
	Count int
	Gap   geometry.Length // between two of its prints; 0 where it has one
}

// better tells whether c is to be preferred to d: more whole prints, then rows (or columns) of
// equal length, then the more even opposite borders, then the larger smallest border, and round
// a shade fewer prints across the seam, and last a matrix of parts that begins with its first place.
func (c Choice) better(d Choice) bool {
	if c.Count != d.Count {
		return c.Count > d.Count
	}
	if c.equal() != d.equal() {
		return c.equal()
	}
	if u, v := c.unevenness(), d.unevenness(); math.Abs(float64(u-v)) > float64(geometry.Tolerance) {
		return u < v
	}
	if u, v := c.Border.Least(), d.Border.Least(); (u - v).Abs() > geometry.Tolerance {
		return u > v
	}
	if c.Seam != d.Seam {
		return c.Seam < d.Seam
	}
	return c.Begins == geometry.Site{} && d.Begins != geometry.Site{}
}

// equal tells whether all rows hold as many prints, or all columns where there are no rows.
func (c Choice) equal() bool {
	counts := c.RowCounts
	if len(counts) == 0 {
		counts = c.ColumnCounts
	}
	for _, n := range counts {
		if n != counts[0] {
			return false
		}
	}
	return true
}

// unevenness is how far opposite borders differ, both pairs together.
func (c Choice) unevenness() geometry.Length {
	b := c.Border
	return geometry.Length(math.Abs(float64(b.Left-b.Right)) + math.Abs(float64(b.Top-b.Bottom)))
}

// allowed tells whether the job's wishes for the centre lines and for the number of prints leave
// room for c.
func (c Choice) allowed(p *job.Pass) bool {
	return c.gives(p.Exactly) && (p.CentreAcross == job.OnBest || c.Across == "" || c.Across == p.CentreAcross) &&
		(p.CentreDown == job.OnBest || c.Down == "" || c.Down == p.CentreDown)
}

// take returns the index of the best of the choices allowed, or -1 where none is.
func take(choices []Choice, p *job.Pass) int {
	taken := -1
	for i, c := range choices {
		if c.allowed(p) && (taken < 0 || c.better(choices[taken])) {
			taken = i
		}
	}
	return taken
}

// words names a way of centring.
func (c Choice) words() string { return string(c.Across) + " across, " + string(c.Down) + " down" }

// Why says in words what the choice taken has over the others: see better.
func (p *PassPlan) Why() string {
	taken := p.Choice()
	rival, most := -1, taken
	for i, c := range p.Choices {
		if c.Count > most.Count {
			most = c
		}
		if i != p.Taken && c.allowed(p.Pass) && (rival < 0 || c.better(p.Choices[rival])) {
			rival = i
		}
	}
	asked := p.Pass.CentreAcross != job.OnBest || p.Pass.CentreDown != job.OnBest
	if rival < 0 {
		return "the job asks for it" + missed(most, taken)
	}
	other := p.Choices[rival]
	text := ""
	switch u, v := taken.unevenness(), other.unevenness(); {
	case taken.Count > other.Count:
		text = "it gives the most whole prints"
	case taken.equal() && !other.equal():
		line := "rows"
		if len(taken.RowCounts) == 0 {
			line = "columns"
		}
		text = fmt.Sprintf("it gives as many prints as %s, in %s of equal length", other.words(), line)
	case math.Abs(float64(u-v)) > float64(geometry.Tolerance):
		text = fmt.Sprintf("it gives as many prints as %s, and more even borders", other.words())
	case taken.Border.Least() > other.Border.Least()+geometry.Tolerance:
		text = fmt.Sprintf("it gives as many prints as %s, and its smallest border is larger", other.words())
	case taken.Seam < other.Seam:
		text = fmt.Sprintf("it gives as many prints as %s, and fewer of them lie across the seam", other.words())
	case taken.Begins == (geometry.Site{}) && other.Begins != taken.Begins:
		text = "others are just as good, and this one begins with the first block, as the job is written"
	default:
		text = fmt.Sprintf("it is just as good as %s; of two alike, the first is taken", other.words())
	}
	if asked {
		text += ", of the ways the job allows" + missed(most, taken)
	}
	return text
}

// missed says what the job's wishes for the centre lines cost.
func missed(most, taken Choice) string {
	if most.Count <= taken.Count {
		return ""
	}
	return fmt.Sprintf(", though %s gives %s", most.words(), words.Counted(most.Count, "print", "prints"))
}
