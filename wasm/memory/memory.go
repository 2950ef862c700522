// Package memory tells what a browser program needs. WebAssembly gives no memory back, so that the size of a program alone
// does not tell whether it grows.
package memory

import "runtime"

// Held is what the program holds when garbage has gone [bytes].
func Held() float64 {
	var m runtime.MemStats
	runtime.GC()
	runtime.ReadMemStats(&m)
	return float64(m.HeapAlloc)
}
