// Package planner spreads a layout over sheets of paper: on the fewest, with as little as can be
// cut where two sheets meet, and the joins clear of the lines that things are laid by; or cuts its
// rim into strips. Everything is in the frame of the layout, in true lengths. It draws nothing.
package planner
