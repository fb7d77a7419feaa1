// Package jobfile reads a job file (TOML) into a job that is known good, or says in which line
// what is wrong and what to write instead. It knows every key, changes a job by the flags of a
// command, turns flags alone into a job file, and writes job files to start from.
//
// It never works out what fits: that is what package plan is for.
package jobfile
