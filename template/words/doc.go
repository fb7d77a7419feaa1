// Package words is plain English for what the makers read: counts, lists, plurals, quotes, and
// the known word nearest to one that is not known. It has never heard of a block.
package words
