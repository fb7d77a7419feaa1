package side

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"underlay/geometry"
	"underlay/template/job"
	"underlay/template/jobfile/edit"
	"underlay/template/plan"
	"underlay/template/say"
)

// more says what one more print of a pass takes, with the edits that put each way into the job.
func (v view) more(cloth *plan.ItemPlan, p *plan.PassPlan, path string) {
	for _, m := range say.MoreOf(v.plan.Job.Units, p) {
		more := More{Path: path, Text: m.What, Ways: []Way{}}
		for _, w := range m.Ways {
			more.Ways = append(more.Ways, Way{w.Text, v.edits(p.Pass, path, m.Down, w)})
		}
		same := func(x More) bool {
			return x.Path == more.Path && x.Text == more.Text && slices.EqualFunc(x.Ways, more.Ways, sameWay)
		}
		if !slices.ContainsFunc(v.More, same) {
			v.More = append(v.More, more)
		}
	}
}

func sameWay(a, b Way) bool { return a.Text == b.Text && slices.Equal(a.Edits, b.Edits) }

// edits are those that put a change of a pass, along an axis, into the job; none where no plain
// edit does.
func (v view) edits(p *job.Pass, path string, down bool, w say.Way) []Edit {
	edits := []Edit{}
	item := fmt.Sprintf("item.%d", v.Item)
	it := v.plan.Job.Items[v.Item]
	switch w.Change {
	case say.MoreCloth:
		edits = v.moreCloth(it, item, down, w.By)
	case say.LessBorder:
		edits = []Edit{{item + ".border", v.border(it, item, down, w.By)}}
	case say.LessGap:
		edits = v.lessGap(p, path, down, w.By)
	case say.SmallerBlock:
		edits = v.smallerBlock(p, down, w.By)
	}
	return notNil(edits)
}

// moreCloth makes an item so much larger. Of an outline and of a cover known by its sides it is for the
// maker to say where.
func (v view) moreCloth(it *job.Item, item string, down bool, by geometry.Length) []Edit {
	set := func(key string, l geometry.Length) Edit {
		return Edit{item + "." + key, v.write(l, item+"."+key)}
	}
	round := ceil(by / math.Pi)
	switch it.Shape {
	case job.Rectangle:
		size := it.Size
		*axis(&size, down) += by
		return []Edit{{item + ".size", v.writeSize(size, item+".size")}}
	case job.Round:
		return []Edit{set("size", it.Size.W+by)}
	case job.Drum:
		switch {
		case down:
			return []Edit{set("height", it.Shade.Height+by)}
		case v.given(item + ".around"):
			return []Edit{set("around", it.Size.W+by)}
		}
		return []Edit{set("diameter", it.Shade.Top+round)}
	case job.Cone:
		switch taped := v.given(item + ".slope"); {
		case taped && down:
			return nil
		case down:
			return []Edit{set("height", it.Shade.Height+by)}
		case taped:
			return []Edit{set("top-around", it.Shade.Top*math.Pi+by), set("bottom-around", it.Shade.Bottom*math.Pi+by)}
		}
		return []Edit{set("top", it.Shade.Top+round), set("bottom", it.Shade.Bottom+round)}
	}
	return nil
}

// ceil rounds up to a hundredth of a millimetre.
func ceil(l geometry.Length) geometry.Length { return geometry.UnitMM.Up(l) }

// border is the border of an item, so much less on both sides of an axis, but not below its hem.
func (v view) border(it *job.Item, item string, down bool, by geometry.Length) string {
	b := it.Border
	less := func(l geometry.Length) geometry.Length { return max(l-by, it.Hem) }
	switch {
	case it.Shape.EvenBorder():
		return v.write(less(b.Top), item+".border")
	case down:
		b.Top, b.Bottom = less(b.Top), less(b.Bottom)
	default:
		b.Left, b.Right = less(b.Left), less(b.Right)
	}
	if it.Shape.Shade() && b.Top == b.Bottom {
		return v.write(b.Top, item+".border")
	}
	var sides []string
	for _, l := range []geometry.Length{b.Top, b.Right, b.Bottom, b.Left} {
		sides = append(sides, v.write(l, item+".border"))
	}
	return strings.Join(sides, ", ")
}

// lessGap makes the least gap of a pass so much less; of gaps both ways that which is meant.
func (v view) lessGap(p *job.Pass, path string, down bool, by geometry.Length) []Edit {
	gaps := p.Gap
	less := func(g job.Gap) job.Gap {
		low := geometry.Length(0)
		if g.Least < 0 {
			low = min(-geometry.Millimetre, g.Least)
		}
		if g.Most <= g.Least {
			g.Most = max(g.Most-by, low)
		}
		g.Least = max(g.Least-by, low)
		return g
	}
	both := p.Repeat.OneGap() || v.given(path+".gap-even")
	if both || !down {
		gaps.Across = less(gaps.Across)
	}
	if both || down {
		gaps.Down = less(gaps.Down)
	}
	write := func(g job.Gap) string {
		if g.Most <= g.Least {
			return v.write(g.Least, path+".gap")
		}
		return v.write(g.Least, path+".gap") + " to " + v.write(g.Most, path+".gap")
	}
	if gaps.Across == gaps.Down {
		return []Edit{{path + ".lap", ""}, {path + ".gap-across", ""}, {path + ".gap-down", ""}, {path + ".gap", write(gaps.Across)}}
	}
	return []Edit{{path + ".lap", ""}, {path + ".gap", ""}, {path + ".gap-across", write(gaps.Across)}, {path + ".gap-down", write(gaps.Down)}}
}

// smallerBlock makes the face of a pass's block so much smaller. One with an outline is carved anew.
func (v view) smallerBlock(p *job.Pass, down bool, by geometry.Length) []Edit {
	i := slices.Index(v.plan.Job.Blocks, p.Block)
	size := p.Block.Size
	if i < 0 || p.Block.Shape == job.OutlineFace {
		return nil
	}
	path := fmt.Sprintf("block.%d.print", i)
	switch {
	case p.Block.Shape.Regular():
		return []Edit{{path, v.write(size.W-by, path)}}
	case p.Turns.Mixed():
		size = geometry.Size{W: size.W - by, H: size.H - by}
	case p.Repeat.Framed():
		size.W -= by
	default:
		*axis(&size, down != p.Turns.AllAside()) -= by
	}
	return []Edit{{path, v.writeSize(size, path)}}
}

func axis(s *geometry.Size, down bool) *geometry.Length {
	if down {
		return &s.H
	}
	return &s.W
}

// given tells whether there is something at a path.
func (v view) given(path string) bool {
	p, err := edit.ParsePath(path)
	return err == nil && edit.Find(v.root, p) != nil
}

// unit is the one in which a value is written, else that of the job.
func (v view) unit(path string) geometry.Unit {
	p, err := edit.ParsePath(path)
	if err == nil {
		if n := edit.Find(v.root, p); n != nil {
			if len(n.Items) > 0 {
				n = n.Items[0]
			}
			text, _ := n.Value.(string)
			text = strings.TrimSpace(text)
			for _, u := range []geometry.Unit{geometry.UnitMM, geometry.UnitCM, geometry.UnitInch} {
				if strings.HasSuffix(text, u.String()) {
					return u
				}
			}
		}
	}
	return v.plan.Job.Units
}

// write writes a length in the unit of what is at a path.
func (v view) write(l geometry.Length, path string) string {
	u := v.unit(path)
	return number(l, u) + " " + u.String()
}

// writeSize writes a size in the unit of what is at a path.
func (v view) writeSize(s geometry.Size, path string) string {
	u := v.unit(path)
	return number(s.W, u) + " x " + number(s.H, u) + " " + u.String()
}

// number writes a length to a ten-thousandth of a millimetre.
func number(l geometry.Length, u geometry.Unit) string {
	switch u {
	case geometry.UnitInch:
		if sixteenths := float64(l/geometry.Inch) * 16; math.Abs(sixteenths-math.Round(sixteenths)) < 1e-9 {
			return u.Number(l)
		}
		return geometry.Decimals(float64(l/geometry.Inch), 6)
	case geometry.UnitCM:
		return geometry.Decimals(float64(l/geometry.Centimetre), 5)
	}
	return geometry.Decimals(float64(l), 4)
}
