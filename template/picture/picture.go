package picture

// Picture is a picture of one print, dark on light, as the maker has it and as it was read.
type Picture struct {
	Name string // of its file, without folders
	File []byte // as it came; nobody may write into it
	Mask *Mask  // the print in it
}
