// Package edit changes the text of a job file in place: text in, text out. One value is set, added or
// taken away, or a whole table; a name is changed with all that goes by it. Remarks, order, spelling,
// blank lines and line ends of all else stay as they are, and only the lines concerned differ.
//
// The text need not be a good job, as it may be half typed; but it has to be TOML. Of any other it
// says what is wrong, and changes nothing.
package edit
