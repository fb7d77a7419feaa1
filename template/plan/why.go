package plan

import (
	"fmt"
	"math"

	"underlay/geometry"
	"underlay/template/job"
	"underlay/template/words"
)

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
