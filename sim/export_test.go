package sim

// Canopies is the number of canopies that the engine remembers for runs over many days.
func (e *Engine) Canopies() int { return len(e.leans.keys) }
