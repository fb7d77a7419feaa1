// Package toml reads the text of a job file into a tree of values, each with its line and the
// place it stands at in the text. It knows how a job file is written and nothing of what it says.
package toml
