package sim

import (
	"encoding/json"
	"slices"
)

// remembered is the number of values that a cache keeps at least: four options and as many ways back.
const remembered = 8

// cache keeps the values made last, by key. The zero value is empty.
type cache[V any] struct {
	keys   []string
	values []V
	most   int // values that it keeps, if more than others
}

// get returns the value of a key, made by build when it is not there. The value that was asked for longest ago goes first.
func (c *cache[V]) get(key string, build func() (V, error)) (V, error) {
	if i := slices.Index(c.keys, key); i >= 0 {
		value := c.values[i]
		c.keys, c.values = append(slices.Delete(c.keys, i, i+1), key), append(slices.Delete(c.values, i, i+1), value)
		return value, nil
	}
	value, err := build()
	if err != nil {
		return value, err
	}
	c.put(key, value)
	return value, nil
}

// find returns the value of a key, the zero value where there is none.
func (c *cache[V]) find(key string) (value V) {
	if i := slices.Index(c.keys, key); i >= 0 {
		return c.values[i]
	}
	return value
}

// put keeps the value of a key that is not there yet.
func (c *cache[V]) put(key string, value V) {
	if len(c.keys) >= max(c.most, remembered) {
		c.keys, c.values = slices.Delete(c.keys, 0, 1), slices.Delete(c.values, 0, 1) // lets go of them at once
	}
	c.keys, c.values = append(c.keys, key), append(c.values, value)
}

// fork is a cache that keeps the same values and forgets on its own.
func (c *cache[V]) fork() cache[V] {
	return cache[V]{slices.Clone(c.keys), slices.Clone(c.values), c.most}
}

// keyOf writes the inputs of a stage as a key.
func keyOf(inputs ...any) (string, error) {
	raw, err := json.Marshal(inputs)
	return string(raw), err
}
