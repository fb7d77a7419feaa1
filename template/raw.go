package template

import (
	"reflect"
	"strings"
)

// The raw types hold a job file as TOML has it. A value is left as it comes (any), so that a
// value of the wrong kind is one more problem to report and does not end the reading. The
// names in the tags are all the keys there are, in the order in which they are listed.

type rawJob struct {
	Title    any         `toml:"title"`
	Units    any         `toml:"units"`
	Paper    rawPaper    `toml:"paper"`
	Printer  rawPrinter  `toml:"printer"`
	Printing rawPrinting `toml:"printing"`
	Blocks   []rawBlock  `toml:"block"`
	Items    []rawItem   `toml:"item"`
}

type rawPaper struct {
	Size    any `toml:"size"`
	Margin  any `toml:"margin"`
	Overlap any `toml:"overlap"`
	Extent  any `toml:"extent"`
	Lines   any `toml:"lines"`
	Reach   any `toml:"reach"`
}

type rawPrinter struct {
	Across any `toml:"across"`
	Down   any `toml:"down"`
}

type rawPrinting struct {
	Hand           any `toml:"hand"`
	SecondsAPrint  any `toml:"seconds-a-print"`
	SecondsAColour any `toml:"seconds-a-colour"`
	PaintCover     any `toml:"paint-cover"`
}

type rawBlock struct {
	Name       any `toml:"name"`
	Shape      any `toml:"shape"`
	Print      any `toml:"print"`
	Outline    any `toml:"outline"`
	Wood       any `toml:"wood"`
	WoodOffset any `toml:"wood-offset"`
	Inked      any `toml:"inked"`
}

type rawItem struct {
	Name     any       `toml:"name"`
	Shape    any       `toml:"shape"`
	Size     any       `toml:"size"`
	Outline  any       `toml:"outline"`
	Diameter any       `toml:"diameter"`
	Around   any       `toml:"around"`
	Top      any       `toml:"top"`
	Bottom   any       `toml:"bottom"`
	Height   any       `toml:"height"`
	Lap      any       `toml:"lap"`
	Border   any       `toml:"border"`
	Hem      any       `toml:"hem"`
	Quantity any       `toml:"quantity"`
	Faces    any       `toml:"faces"`
	Zones    []rawZone `toml:"keep-clear"`
	Passes   []rawPass `toml:"pass"`
}

type rawZone struct {
	Name any `toml:"name"`
	At   any `toml:"at"`
	Size any `toml:"size"`
}

type rawPass struct {
	Name         any `toml:"name"`
	Block        any `toml:"block"`
	Face         any `toml:"face"`
	Repeat       any `toml:"repeat"`
	Gap          any `toml:"gap"`
	GapAcross    any `toml:"gap-across"`
	GapDown      any `toml:"gap-down"`
	Lap          any `toml:"lap"`
	Step         any `toml:"step"`
	GridTurn     any `toml:"grid-turn"`
	CentreAcross any `toml:"centre-across"`
	CentreDown   any `toml:"centre-down"`
	Turns        any `toml:"turns"`
	Colours      any `toml:"colours"`
	Order        any `toml:"order"`
	Sides        any `toml:"sides"`
	Tops         any `toml:"tops"`
	Rings        any `toml:"rings"`
	Between      any `toml:"between"`
	OpenEdges    any `toml:"open-edges"`
	On           any `toml:"on"`
	Offset       any `toml:"offset"`
}

// shape is what a job file may hold at a place: the keys of a table, and which of them are
// tables in turn.
type shape struct {
	path   string // "", "paper", "item.pass"
	many   bool   // written [[path]]
	order  []string
	tables map[string]*shape
}

// jobShape is the shape of a whole job file, read off the raw types.
func jobShape() *shape { return shapeOf("", reflect.TypeFor[rawJob]()) }

func shapeOf(path string, t reflect.Type) *shape {
	s := &shape{path: path, tables: map[string]*shape{}}
	for i := range t.NumField() {
		f := t.Field(i)
		key := f.Tag.Get("toml")
		s.order = append(s.order, key)
		below := strings.TrimPrefix(path+"."+key, ".")
		switch f.Type.Kind() {
		case reflect.Struct:
			s.tables[key] = shapeOf(below, f.Type)
		case reflect.Slice:
			s.tables[key] = shapeOf(below, f.Type.Elem())
			s.tables[key].many = true
		}
	}
	return s
}

// heading is how the table is written.
func (s *shape) heading() string {
	switch {
	case s.path == "":
		return "the top of the file"
	case s.many:
		return "[[" + s.path + "]]"
	}
	return "[" + s.path + "]"
}

// home returns the table a key belongs to, the first that has it, or the heading that the key
// itself is; "" where there is none.
func (s *shape) home(key string) string {
	for _, k := range s.order {
		if k == key {
			if t := s.tables[k]; t != nil {
				return t.heading()
			}
			return s.heading()
		}
	}
	for _, k := range s.order {
		if t := s.tables[k]; t != nil {
			if h := t.home(key); h != "" {
				return h
			}
		}
	}
	return ""
}
