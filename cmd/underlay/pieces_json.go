package main

import (
	"underlay/template/job"
	"underlay/template/plan"
)

// putPieces says how the pieces of a cloth lie on it.
func putPieces(item *jsonItem, ip *plan.ItemPlan) {
	p, piece, cloth := ip.Item.Pieces, ip.Item.Size, ip.WholeCloth()
	item.Width, item.Height = length(cloth.W()), length(cloth.H())
	across, down := ip.Cuts()
	item.Pieces = &jsonPieces{
		Across: p.Columns, Down: p.Rows, Apart: length(p.Apart), Width: length(piece.W), Height: length(piece.H),
		Cuts: jsonCuts{lengths(across), lengths(down)},
	}
}

// putOnPieces makes the counts of a pass those of the whole cloth, and numbers its prints in all.
func putOnPieces(pass *jsonPass, p *plan.PassPlan, pieces job.Pieces) {
	pass.Columns, pass.Rows = pass.Columns*pieces.Columns, pass.Rows*pieces.Rows
	for i, q := range p.Prints {
		print := &pass.Prints[i]
		print.Piece, print.InPiece, print.Number = q.Piece, q.Number, p.NumberInAll(i, pieces)
	}
}
