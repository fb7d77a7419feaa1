package plan

import (
	"testing"

	"underlay/geometry"
	"underlay/template/job"

	"github.com/google/go-cmp/cmp"
)

func TestWhy(t *testing.T) {
	even, uneven := geometry.EvenEdges(30), geometry.Edges{Top: 30, Bottom: 30, Left: 20, Right: 40}
	choice := func(across, down job.Centring, count int, border geometry.Edges) Choice {
		return Choice{Across: across, Down: down, Count: count, Border: border}
	}
	for _, c := range []struct {
		name    string
		asked   [2]job.Centring
		choices []Choice
		want    string
	}{
		{"most", [2]job.Centring{job.OnBest, job.OnBest}, []Choice{choice(job.OnPrint, job.OnPrint, 9, even), choice(job.OnPrint, job.OnJoint, 12, uneven)},
			"it gives the most whole prints"},
		{"evenness", [2]job.Centring{job.OnBest, job.OnBest}, []Choice{choice(job.OnPrint, job.OnPrint, 9, uneven), choice(job.OnJoint, job.OnPrint, 9, even)},
			"it gives as many prints as print across, print down, and more even borders"},
		{"smallest border", [2]job.Centring{job.OnBest, job.OnBest}, []Choice{choice(job.OnPrint, job.OnPrint, 9, even), choice(job.OnJoint, job.OnPrint, 9, geometry.EvenEdges(31))},
			"it gives as many prints as print across, print down, and its smallest border is larger"},
		{"alike", [2]job.Centring{job.OnBest, job.OnBest}, []Choice{choice(job.OnPrint, job.OnPrint, 9, even), choice(job.OnJoint, job.OnPrint, 9, even)},
			"it is just as good as joint across, print down; of two alike, the first is taken"},
		{"asked", [2]job.Centring{job.OnJoint, job.OnPrint}, []Choice{choice(job.OnPrint, job.OnPrint, 8, even), choice(job.OnJoint, job.OnPrint, 9, even)},
			"the job asks for it"},
		{"asked at a cost", [2]job.Centring{job.OnPrint, job.OnPrint}, []Choice{choice(job.OnPrint, job.OnPrint, 1, even), choice(job.OnJoint, job.OnPrint, 2, even)},
			"the job asks for it, though joint across, print down gives 2 prints"},
		{"half asked at a cost", [2]job.Centring{job.OnPrint, job.OnBest},
			[]Choice{choice(job.OnPrint, job.OnPrint, 9, even), choice(job.OnPrint, job.OnJoint, 12, even), choice(job.OnJoint, job.OnJoint, 16, even)},
			"it gives the most whole prints, of the ways the job allows, though joint across, joint down gives 16 prints"},
	} {
		t.Run(c.name, func(t *testing.T) {
			pass := &job.Pass{CentreAcross: c.asked[0], CentreDown: c.asked[1]}
			p := &PassPlan{Pass: pass, Choices: c.choices, Taken: take(c.choices, pass)}
			if d := cmp.Diff(c.want, p.Why()); d != "" {
				t.Error(d)
			}
		})
	}
}
