// Package look draws items as they will look when they are printed: the cloth with its hem and its
// plain border, every print as its block's motif, in its colours, paint over paint; a shade also as
// it stands.
//
// What is drawn is in the frame of the page it is for. Marks of prints carry the role RolePrint and
// their number.
package look
