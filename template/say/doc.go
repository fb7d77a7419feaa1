// Package say tells what fits, in sentences and tables for the terminal and the page in a
// browser. It draws nothing, and every figure in it is the plan's.
package say
