package plan

import (
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

func TestFacesThatAreAlikeShareAGuide(t *testing.T) {
	const head = "[[block]]\nname = 'fern'\nprint = '90 x 90 mm'\n[[block]]\nname = 'acorn'\nprint = '30 x 30 mm'\n" +
		"[[item]]\nname = 'cover'\nsize = '25 x 25 cm'\nborder = '20 mm'\n"
	pass := func(block, face string) string {
		s := "[[item.pass]]\nblock = '" + block + "'\ngap = '1 mm'\nname = '" + block + " " + face + "'\n"
		if face != "" {
			s += "face = '" + face + "'\n"
		}
		return s
	}
	// Prints by hand, 210 mm printable: (210 + 1) / 91 and (210 + 1) / 31, rounded down, are
	// 2 x 2 ferns and 6 x 6 acorns.
	type face struct {
		Name, Guide string
		Firsts      []int
		Count       int
	}
	for _, c := range []struct {
		name, faces, passes string
		want                []face
	}{
		{"no faces", "", pass("fern", "") + pass("acorn", ""), []face{{"", "guide", []int{1, 5}, 40}}},
		{"alike", "faces = ['front', 'back']\n", pass("fern", "") + pass("acorn", ""),
			[]face{{"front and back", "guide, front and back", []int{1, 5}, 40}}},
		{"one face left plain", "faces = ['front', 'back']\n", pass("fern", "front"),
			[]face{{"front", "guide, front", []int{1}, 4}}},
		{"one pass more", "faces = ['front', 'back']\n", pass("fern", "") + pass("acorn", "back"),
			[]face{{"front", "guide, front", []int{1}, 4}, {"back", "guide, back", []int{1, 5}, 40}}},
		{"two of three alike", "faces = ['left', 'middle', 'right']\n", pass("acorn", "middle") + pass("fern", ""),
			[]face{{"left and right", "guide, left and right", []int{1}, 4}, {"middle", "guide, middle", []int{1, 37}, 40}}},
		{"nothing in common", "faces = ['front', 'back']\n", pass("fern", "front") + pass("acorn", "back"),
			[]face{{"front", "guide, front", []int{1}, 4}, {"back", "guide, back", []int{1}, 36}}},
	} {
		plan := planOf(t, head+c.faces+c.passes)
		var got []face
		for _, f := range plan.Items[0].Faces() {
			firsts := []int{}
			for _, p := range f.Passes {
				firsts = append(firsts, p.First)
			}
			got = append(got, face{f.Name(), f.Titled("guide"), firsts, f.Count()})
		}
		if diff := cmp.Diff(c.want, got); diff != "" {
			t.Errorf("%s: %s", c.name, diff)
		}
		// What is printed on a face is what its passes say, in their order.
		for _, f := range plan.Items[0].Faces() {
			for _, name := range f.Names {
				var want []string
				for _, p := range plan.Job.Items[0].Passes {
					if p.Face == "" || p.Face == name {
						want = append(want, p.Name)
					}
				}
				names := []string{}
				for _, p := range f.Passes {
					names = append(names, p.Pass.Name)
				}
				if !slices.Equal(names, want) {
					t.Errorf("%s: %s gets %s", c.name, name, strings.Join(names, ", "))
				}
			}
		}
	}
}
