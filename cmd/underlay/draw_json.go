package main

import (
	"underlay/template"
)

// The types below are what draw --json says it wrote.

type jsonDrawn struct {
	File   string      `json:"file"`
	Pages  int         `json:"pages"`
	Sheets []jsonSheet `json:"sheets"`
}

// jsonSheet says where a sheet's part of the layout lies: a point (X, Y) in the item's frame
// lies at At + (X - Area.x, Y - Area.y) * Scale from the page's top left corner.
type jsonSheet struct {
	Page   int       `json:"page"`
	Item   string    `json:"item"`
	Part   string    `json:"part"`
	Pass   string    `json:"pass,omitempty"` // where passes are apart
	Name   string    `json:"name"`
	Row    int       `json:"row"`
	Column int       `json:"column"`
	Size   jsonSize  `json:"page_mm"`
	Area   jsonArea  `json:"area_mm"`
	At     jsonXY    `json:"at_mm"`
	Scale  jsonScale `json:"scale"`
}

type jsonSize struct {
	Width  mm `json:"width"`
	Height mm `json:"height"`
}

type jsonArea struct {
	jsonXY
	jsonSize
}

type jsonXY struct {
	X mm `json:"x"`
	Y mm `json:"y"`
}

type jsonScale struct {
	Across float64 `json:"across"`
	Down   float64 `json:"down"`
}

func sheetsJSON(file string, pages int, places []template.SheetPlace) jsonDrawn {
	out := jsonDrawn{File: file, Pages: pages, Sheets: []jsonSheet{}}
	for _, p := range places {
		s := p.Sheet
		out.Sheets = append(out.Sheets, jsonSheet{
			Page: p.Page, Item: p.Item, Part: p.Part, Pass: p.Pass, Name: s.Name, Row: s.Row, Column: s.Column,
			Size: jsonSize{length(s.Page.W), length(s.Page.H)},
			Area: jsonArea{
				jsonXY{length(s.Area.Min.X), length(s.Area.Min.Y)},
				jsonSize{length(s.Area.W()), length(s.Area.H())},
			},
			At:    jsonXY{length(s.At.X), length(s.At.Y)},
			Scale: jsonScale{s.Scale.Across, s.Scale.Down},
		})
	}
	return out
}
