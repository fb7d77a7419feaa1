package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"underlay/template/job"
	"underlay/template/jobfile"
)

// jobFrom is where a command gets its job: a file, standard input, or the flags.
type jobFrom struct {
	file  string        // "-": standard input; "": the flags
	quick jobfile.Quick // with a file, what flags say in place of it
}

// source says where the job comes from: the one argument there is, or the flags. Flags that
// stand in for a file do not go with one, but for those in keep.
func source(command string, args []string, q jobfile.Quick, keep ...string) (jobFrom, error) {
	var given []string
	for _, f := range quickTexts(&q) {
		if *f.to != "" {
			given = append(given, f.name)
		}
	}
	if len(args) > 1 {
		return jobFrom{}, usage("%s takes one JOB, and %d are given: %s; name one, and put quotes round a name with spaces",
			command, len(args), strings.Join(args, ", "))
	}
	if len(args) == 1 {
		if args[0] == "" {
			return jobFrom{}, usage("the name of the JOB is empty; write underlay %s reading-nook.toml", command)
		}
		for _, name := range given {
			if !slices.Contains(keep, name) {
				return jobFrom{}, bothGiven(name, args[0])
			}
		}
		return jobFrom{file: args[0], quick: q}, nil
	}
	if len(given) == 0 || len(given) == 1 && given[0] == "paper" {
		return jobFrom{}, usage("no JOB is given; write underlay %s reading-nook.toml, or underlay %s - to read it from standard input", command, command)
	}
	if q.Item == "" || q.Border == "" || q.Block == "" || q.Gap == "" && q.Lap == "" && job.Repeat(q.Repeat).Gapped() {
		_, err := jobfile.FromFlags(q)
		return jobFrom{}, usage("%s", err)
	}
	return jobFrom{quick: q}, nil
}

// bothGiven refuses a flag that stands in for a job file beside one.
func bothGiven(flag, file string) error {
	return usage("--%s and the job %s are both given; take out one of them: the flag stands in for a job file", flag, file)
}

// job reads the job and checks it.
func (c *call) job(from jobFrom) (*job.Job, error) {
	if from.file == "" {
		return jobfile.FromFlags(from.quick)
	}
	data, err := c.read(from.file)
	if err != nil {
		return nil, err
	}
	return jobfile.ReadWith(from.file, data, picturesBeside(from.file))
}

// read returns a job file, or standard input: no more of it than shows that it is too long.
func (c *call) read(name string) ([]byte, error) {
	const most = jobfile.LargestJob + 1
	if name == "-" {
		data, err := io.ReadAll(io.LimitReader(c.stdin, most))
		if err != nil {
			return nil, fmt.Errorf("standard input cannot be read: %w; send it a job file, or write the name of one", cause(err))
		}
		return data, nil
	}
	missing := "check its name and folder"
	if near := nearFile(name); near != "" {
		return readFile(name, most, "there is "+near+" beside it: write that", "write the name of a job file in it")
	}
	if info, err := os.Stat(filepath.Dir(name)); err == nil && info.IsDir() {
		missing += ", or begin one with underlay start > " + name
	}
	return readFile(name, most, missing, "write the name of a job file in it")
}

// readFile returns the first bytes of a file, most at the most. Missing and folder say what to do
// where there is none, or a folder instead.
func readFile(name string, most int64, missing, folder string) (data []byte, err error) {
	err = withFile(name, missing, folder, func(f *os.File, _ fs.FileInfo) error {
		data, err = io.ReadAll(io.LimitReader(f, most))
		return err
	})
	return data, err
}

// withFile has read read a file. What the system says is wrong with it, and a change of the file
// meanwhile, become messages; other errors are handed on, with the file's name.
func withFile(name, missing, folder string, read func(f *os.File, info fs.FileInfo) error) error {
	info, err := os.Stat(name)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return fmt.Errorf("%s: there is no such file; %s", name, missing)
	case err == nil && info.IsDir():
		return fmt.Errorf("%s: this is a folder; %s", name, folder)
	}
	f, err := os.Open(name)
	if err == nil {
		defer f.Close()
		if err = read(f, info); err == nil && changed(info, f) {
			return fmt.Errorf("%s: this file was changed while it was read; wait until it is saved, and run this again", name)
		}
	}
	if _, ok := errors.AsType[*fs.PathError](err); ok {
		return fmt.Errorf("%s: this file cannot be read: %w; check its name, and who may read it", name, cause(err))
	}
	if err != nil {
		return fmt.Errorf("%s: %w", name, err)
	}
	return nil
}

// changed tells whether a file is no longer as it was found: half of it may have been read.
func changed(found fs.FileInfo, f *os.File) bool {
	now, err := f.Stat()
	return err == nil && found.Mode().IsRegular() && (now.Size() != found.Size() || !now.ModTime().Equal(found.ModTime()))
}

// cause is what the system says is wrong, without the name of the file and what was tried.
func cause(err error) error {
	var path *fs.PathError
	var link *os.LinkError
	switch {
	case errors.As(err, &path):
		return path.Err
	case errors.As(err, &link):
		return link.Err
	}
	return err
}
