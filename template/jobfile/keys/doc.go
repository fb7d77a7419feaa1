// Package keys has the one table of all that a job file can say: each key with its table, what is
// written after it, where it makes sense, what holds without it, and a sentence for those who ask.
// It checks no value.
package keys
