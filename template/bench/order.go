package bench

import (
	"fmt"
	"strings"

	"underlay/geometry"
	"underlay/template/job"
	"underlay/template/plan"
	"underlay/template/words"
)

// order says in what order to print, and which corner goes down first.
func (b bench) order() {
	b.Heading("Printing")
	for _, p := range b.face.Passes {
		name := ""
		if len(b.face.Passes) > 1 {
			name = p.Pass.Name
		}
		if len(p.Choice().Runs) > 0 {
			b.Text(words.UpperFirst(strings.TrimPrefix(name+": "+roundWords(p.Pass.Repeat, b.job.Printing.Hand), ": ")))
			continue
		}
		if p.Pass.Repeat.Single() {
			b.Text(words.UpperFirst(strings.TrimPrefix(name+": in the order of the numbers. The corner with the sign goes down first.", ": ")))
			continue
		}
		moved := b.face.Item.Moves != nil && b.face.Item.Moves.Times > 1
		if rounds := p.Rounds(); rounds != nil && !moved {
			b.Text(words.UpperFirst(strings.TrimPrefix(name+": "+roundsWords(p, rounds), ": ")))
			continue
		}
		if p.Pass.Order == job.ByColumn {
			side := "left"
			if b.job.Printing.Hand == job.LeftHand {
				side = "right"
			}
			b.Text(words.UpperFirst(strings.TrimPrefix(fmt.Sprintf("%s: column by column from the %[2]s, each from the near edge. The near %[2]s corner goes down first.", name, side), ": ")))
			continue
		}
		if p.Pass.Order == job.RowByRow {
			b.Text(words.UpperFirst(strings.TrimPrefix(name+": row by row from the near edge, each from the left; the far row last. The near left corner goes down first.", ": ")))
			continue
		}
		stretches := stretches(p.PassPlan, b.face.Item.Area.Centre())
		if m := b.face.Item.Moves; m != nil && m.Times > 1 {
			b.Text(words.UpperFirst(strings.TrimPrefix(name+": stretch by stretch, each in the order of the guide’s numbers. The corner with the sign goes down first.", ": ")))
			continue
		}
		const most = 16 // of a pass set on another, say, that goes to and fro between quarters
		if len(stretches) > most {
			b.Text(words.UpperFirst(strings.TrimPrefix(name+": in the order of the numbers. The corner with the sign goes down first.", ": ")))
			continue
		}
		var rows [][]string
		for _, r := range stretches {
			rows = append(rows, []string{r.where, numbers(p.First+r.from, p.First+r.to), r.corner})
		}
		if name != "" {
			b.Quiet(name)
		}
		b.Table([]string{"where", "prints", "corner that goes down first"}, rows)
	}
	b.Points(dash, []string{
		"Touch the corner with the sign down where it belongs, swing the block round it until it lines up, then lower the rest; press, rock, lift.",
		"Stop and clean the block when the carving fills, when an edge prints thick, or when paint has dried on it.",
	})
}

// roundsWords says which prints of a pass are made in one go, and which when those are dry.
func roundsWords(p plan.FacePass, rounds []int) string {
	var goes []string
	from := p.First
	for _, n := range rounds {
		goes = append(goes, numbers(from, from+n-1))
		from += n
	}
	return "no two prints of one go stand side by side: " + strings.Join(goes, "; when these are dry, ") + ". The corner with the sign goes down first."
}

// roundWords says how a frame or rings are printed.
func roundWords(repeat job.Repeat, hand job.Hand) string {
	way := "clockwise"
	if hand == job.LeftHand {
		way = "anticlockwise"
	}
	if repeat.Ringed() {
		return "ring by ring in the order of the numbers. The corner with the sign goes down first."
	}
	return "round the edge in the order of the numbers, " + way + ". The corner with the sign goes down first."
}

// stretch is a run of prints in one quarter.
type stretch struct {
	where    string
	from, to int // indices
	corner   string
}

// stretches cuts the order of printing into its quarters: first those at the centre.
func stretches(p *plan.PassPlan, centre geometry.Point) []stretch {
	var runs []stretch
	least := p.Prints[0].Origin.Distance(centre)
	for i, print := range p.Prints {
		where := print.Quarter.String() + " quarter"
		if print.Origin.Distance(centre) <= least+geometry.Tolerance {
			where = "nearest the centre"
		}
		corner := cornerWords(print)
		last := len(runs) - 1
		switch {
		case last >= 0 && runs[last].where == where:
			runs[last].to = i
			if !strings.Contains(runs[last].corner, corner) {
				runs[last].corner += " or " + corner
			}
		default:
			runs = append(runs, stretch{where, i, i, corner})
		}
	}
	for i := range runs {
		if strings.Count(runs[i].corner, " or ") > 1 {
			runs[i].corner = "the one with the sign"
		}
	}
	return runs
}

// cornerWords names the corner that goes down first.
func cornerWords(p plan.Print) string {
	d := p.TouchDown.Sub(p.Origin)
	var words []string
	switch {
	case d.Y > geometry.Tolerance:
		words = append(words, "near")
	case d.Y < -geometry.Tolerance:
		words = append(words, "far")
	}
	switch {
	case d.X > geometry.Tolerance:
		words = append(words, "right")
	case d.X < -geometry.Tolerance:
		words = append(words, "left")
	}
	return strings.Join(words, " ")
}
