// Package template binds the papers of a worked out job into one document: it has the table of
// parts, puts them in order, gives each page its place in the list of contents, and takes single
// sheets out again. What the papers show is drawn in the rooms below it; nothing is worked out
// here.
package template
