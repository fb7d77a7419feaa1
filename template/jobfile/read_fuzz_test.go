package jobfile

import (
	"encoding/binary"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"underlay/geometry"
	"underlay/template/internal/messages"
	"underlay/template/internal/repo"
	"underlay/template/job"
	"underlay/template/jobfile/toml"
	"underlay/template/picture"

	"github.com/google/go-cmp/cmp"
	gotoml "github.com/pelletier/go-toml/v2"
)

// FuzzReadJob reads anything as a job file: it never panics, a refusal is a list of plain
// problems, and what is accepted keeps every limit.
func FuzzReadJob(f *testing.F) {
	for _, dir := range []string{repo.Path(f, "examples", "*.toml"), repo.Path(f, "testdata", "bad", "*.toml")} {
		files, err := filepath.Glob(filepath.FromSlash(dir))
		if err != nil {
			f.Fatal(err)
		}
		for _, name := range files {
			data, err := os.ReadFile(name)
			if err != nil {
				f.Fatal(err)
			}
			f.Add(data)
		}
	}
	f.Add([]byte(everything))
	f.Add(pictureJob("[[block]]\nname = 'fern'\nprint = '90 x 60 mm'\npicture = 'fern.png'\n[[block]]\nname = 'wave'\nshape = 'round'\nprint = '60 mm'\npicture = 'Wave.JPEG'\n"))
	f.Add(asUTF16(binary.LittleEndian, everything))
	f.Fuzz(func(t *testing.T, data []byte) {
		there := map[string]*picture.Picture{}
		pictures := func(name string) (*picture.Picture, error) {
			if there[name] == nil {
				there[name] = &picture.Picture{Name: name, Mask: halfInk(20, 16)}
			}
			return there[name], nil
		}
		job, err := ReadWith("nook.toml", data, pictures)
		if err != nil {
			messages.Check(t, "nook.toml", err)
			return
		}
		var read map[string]any
		text, err := toml.DecodeText(data)
		if err != nil {
			t.Fatal(err)
		}
		if err := gotoml.Unmarshal(text, &read); err != nil {
			t.Errorf("accepted, but another reader of TOML says: %v", err)
		}
		checkLimits(t, job)
		var names []string
		for _, b := range job.Blocks {
			if p := b.Picture; p != nil && !slices.Contains(names, p.Name) {
				names = append(names, p.Name)
			}
		}
		if d := cmp.Diff(names, PictureNames(data)); d != "" {
			t.Errorf("other pictures are named: %s", d)
		}
		// What flags say is written into the job, which then reads as it was overridden.
		o := Overrides{Item: job.Items[len(data)%len(job.Items)].Name, Paper: "A3", Lines: "strong"}
		if Override(job, o) != nil {
			return
		}
		if again, err := ReadWith("again.toml", job.Source, pictures); err != nil {
			t.Errorf("overridden it is refused: %v\n%s", err, job.Source)
		} else if d := cmp.Diff(same(job), same(again)); d != "" {
			t.Errorf("overridden it reads as another: %s\n%s", d, job.Source)
		}
	})
}

func checkLimits(t *testing.T, j *job.Job) {
	t.Helper()
	must := func(ok bool, what string) {
		t.Helper()
		if !ok {
			t.Errorf("a job was accepted with %s", what)
		}
	}
	inRange := func(l ...geometry.Length) bool {
		for _, x := range l {
			if !(x >= -longest && x <= longest) {
				return false
			}
		}
		return true
	}
	name := func(s string) bool { return strings.TrimSpace(s) != "" && utf8.RuneCountInString(s) <= longestName }
	p := j.Paper
	must(name(j.Title), "a bad title")
	must(inRange(p.Margin, p.Overlap, p.Reach) && min(p.Margin, p.Overlap, p.Reach) >= 0, "paper out of range")
	if !p.Stock.OneSheet {
		must(p.Stock.Size.W-2*p.Margin-p.Overlap > 0, "no room on a sheet")
	}
	must((j.Printer.Across == 0) == (j.Printer.Down == 0), "one check bar")
	must(len(j.Blocks) > 0 && len(j.Items) > 0, "no block or no item")
	for _, b := range j.Blocks {
		size := b.Face.Bounds().Size()
		must(name(b.Name), "a bad block name")
		must(inRange(size.W, size.H) && min(size.W, size.H) > 0.99, "a face out of range")
		must(size.W-b.Size.W < 1e-6 && b.Size.W-size.W < 1e-6 && size.H-b.Size.H < 1e-6 && b.Size.H-size.H < 1e-6, "a size that is not the face's")
		must(b.Face.Bounds().Centre().Near(geometry.Point{}), "a face off its centre")
		must(b.Wood.None() || b.Wood.Bounds().Holds(b.Face.Bounds()), "wood smaller than the face")
		must(b.Inked >= 0 && b.Inked <= 1, "inked out of range")
	}
	for _, it := range j.Items {
		must(name(it.Name), "a bad item name")
		must(it.Quantity >= 1 && it.Quantity <= mostItems && len(it.Faces) > 0, "a bad quantity or no face")
		must(it.Border.Least() >= 0 && it.Hem >= 0, "a negative border or hem")
		if it.Shape == "cone" {
			must(it.Outline.None() && it.Shade.Top < it.Shade.Bottom && it.Shade.Height > 0, "a cone without slope")
		} else {
			bounds := it.Outline.Bounds()
			must(bounds.Min.Near(geometry.Point{}) && bounds.Max.Near(geometry.Pt(it.Size.W, it.Size.H)), "an item out of its frame")
			must(inRange(it.Size.W, it.Size.H) && it.Size.W > it.Border.Left+it.Border.Right && it.Size.H > it.Border.Top+it.Border.Bottom, "no room inside the border")
			for _, z := range it.Zones {
				must(bounds.Holds(z.Rect) && !z.Rect.Empty(), "a zone beyond the item")
			}
		}
		for _, p := range it.Passes {
			must(name(p.Name) && p.Block != nil && len(p.Turns) > 0 && len(p.Turns[0]) > 0, "a pass without name, block or turns")
			must(p.Between == nil || p.On == nil, "a pass seated twice")
			if !p.Seated() {
				w, h := p.Block.Size.W, p.Block.Size.H
				if p.Turns.AllAside() {
					w, h = h, w
				}
				must(inRange(p.Gap.Across.Most, p.Gap.Down.Most) && p.Gap.Across.Least <= p.Gap.Across.Most && p.Gap.Down.Least <= p.Gap.Down.Most, "a gap out of range")
				must(w+p.Gap.Across.Least > 0.49 && h+p.Gap.Down.Least > 0.49, "no step from print to print")
			}
			must(p.Step > 0 && p.Step < 1, "a step out of range")
		}
	}
}
