package main

import (
	"strconv"
	"time"
)

// latestDate is the last second a PDF can name: its years have four figures (ISO 32000-1,
// 7.9.4).
const latestDate = 253402300799

// date is when the document says it was made: SOURCE_DATE_EPOCH, in seconds since the
// beginning of 1970, or the zero time where that is not set.
func (c *call) date() (time.Time, error) {
	text, ok := c.env("SOURCE_DATE_EPOCH")
	if !ok || text == "" {
		return time.Time{}, nil
	}
	seconds, err := strconv.ParseInt(text, 10, 64)
	if err != nil || seconds < 0 || seconds > latestDate {
		return time.Time{}, usage("SOURCE_DATE_EPOCH is %q; set it to the seconds since 1970 as a whole number, or unset it", text)
	}
	return time.Unix(seconds, 0).UTC(), nil
}
