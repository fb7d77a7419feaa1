package plan

import (
	"slices"

	"underlay/template/job"
	"underlay/template/words"
)

// newItemPlan begins the plan of an item: how the cloth lies for each face that shows it
// otherwise. That the border leaves some area has been checked with the job.
func newItemPlan(item *job.Item, hand job.Hand) *ItemPlan {
	var all []*ItemPlan
	width := newArea(item).Cloth.W()
	for _, name := range faceNames(item) {
		seen, turned := item.Seen(name, width)
		same := slices.IndexFunc(all, func(c *ItemPlan) bool { return c.Item.Alike(seen) })
		if same < 0 {
			c := &ItemPlan{Item: seen, Area: newArea(seen), hand: hand}
			c.Area.Turned = turned
			all = append(all, c)
			same = len(all) - 1
		}
		all[same].FaceNames = append(all[same].FaceNames, name)
	}
	all[0].Turned = all[1:]
	return all[0]
}

// faceNames are the names of an item's faces: one nameless face where it names none.
func faceNames(item *job.Item) []string {
	if len(item.Faces) == 0 {
		return []string{""}
	}
	return item.Faces
}

// Cloths returns the plans of an item, one for each way in which its faces show the cloth: the
// first face's first.
func (ip *ItemPlan) Cloths() []*ItemPlan { return append([]*ItemPlan{ip}, ip.Turned...) }

// clothOf returns the plan for a face.
func (ip *ItemPlan) clothOf(face string) *ItemPlan {
	for _, c := range ip.Turned {
		if slices.Contains(c.FaceNames, face) {
			return c
		}
	}
	return ip
}

// PrintedOn returns the names of the faces, of those that show the cloth so, that a pass is on.
func (ip *ItemPlan) PrintedOn(p *job.Pass) []string {
	if p.Face == "" {
		return ip.FaceNames
	}
	return slices.DeleteFunc(slices.Clone(ip.FaceNames), func(f string) bool { return f != p.Face })
}

// shows tells whether a pass is on any of the faces that show the cloth so.
func (ip *ItemPlan) shows(p *job.Pass) bool { return len(ip.PrintedOn(p)) > 0 }

// onFace names the faces of a cloth that is turned over, for a message; "" of any other.
func (ip *ItemPlan) onFace() string {
	if !ip.Area.Turned {
		return ""
	}
	return ", on the " + words.Shown(words.InWords(ip.FaceNames))
}
