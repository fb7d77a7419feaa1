package template

import (
	"underlay/paper/pdf"
	"underlay/template/job"
	"underlay/template/picture"
)

// CarriedName is what the job file inside a PDF is called.
const CarriedName = "job.toml"

// carried is what a PDF carries inside: the job, and the pictures it names, each once.
func carried(j *job.Job) []pdf.Attachment {
	files := []pdf.Attachment{{Name: CarriedName, Type: "application/toml", Content: j.Source}}
	seen := map[string]bool{}
	for _, b := range j.Blocks {
		if p := b.Picture; p != nil && !seen[p.Name] {
			seen[p.Name] = true
			files = append(files, pdf.Attachment{Name: p.Name, Type: picture.MediaType(p.File), Content: p.File})
		}
	}
	return files
}
