package say

import (
	"testing"
	"time"
)

func TestTime(t *testing.T) {
	for _, c := range []struct {
		d    time.Duration
		want string
	}{
		{29 * time.Second, "0 minutes"}, {60 * time.Second, "1 minute"}, {time.Hour, "1 hour"},
		{time.Hour + time.Minute, "1 hour 1 minute"}, {3*time.Hour + 59*time.Minute + 40*time.Second, "4 hours"},
	} {
		if got := Time(c.d); got != c.want {
			t.Errorf("%v is %q, want %q", c.d, got, c.want)
		}
	}
}
