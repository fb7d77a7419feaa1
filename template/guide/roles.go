package guide

import (
	"underlay/geometry"
	"underlay/paper"
)

// The kinds of marks on a guide. Outlines of prints and of wood carry the print's number.
const (
	RoleEdge   = "edge" // of the cloth
	RoleHem    = "hem"
	RoleBorder = "border"
	RoleCrease = "crease"
	RoleZone   = "zone"
	RolePiece  = "piece"   // the edge of one of several on a cloth, and its name
	RoleCut    = "cut"     // where they are cut apart
	RoleSeam   = "seam"    // the lap of a shade's seam
	RolePrint  = "print"   // its outline
	RoleLap    = "lap"     // where two prints meet that lap
	RoleWood   = "wood"    // corners of the block's body
	RoleSign   = "sign"    // of the corner put down first
	RoleArrow  = "arrow"   // to the top of the block
	RoleNumber = "number"  // in the order of printing
	RoleLeader = "leader"  // from a number to its print
	RoleLaidOn = "laid-on" // where the last row printed is laid, of a cloth that is moved along
	RoleFarEnd = "far-end" // of such a cloth, at the last laying
	RolePart   = "part"    // the name of its block, where there are several
	// Outside the cloth; a tick carries the number of its row or column.
	RoleTick    = "tick"
	RoleTape    = "tape"    // the end of a tape line, and its name
	RoleName    = "name"    // of a row or a column
	RoleFigure  = "figure"  // how far a tick is from the cloth's edge
	RoleCaption = "caption" // which edge that is
)

// line draws a line of a kind, which text keeps off.
func (g *guide) line(path geometry.Path, pen paper.Pen, kind string) {
	g.takeLines(path)
	g.Stamp(paper.NewShape(path), paper.Place{}, pen, paper.Role{Kind: kind})
}
