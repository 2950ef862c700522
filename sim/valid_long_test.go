//go:build long && !js

package sim_test

import "testing"

// TestManyDaysKeepToPhysics runs as many days as a long run has time for.
func TestManyDaysKeepToPhysics(t *testing.T) { daysKeepToPhysics(t, 1500) }

// TestMemoryIsFlatOverManyChanges goes through a thousand changes.
func TestMemoryIsFlatOverManyChanges(t *testing.T) { flat(t, 1000) }
