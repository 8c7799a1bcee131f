package sequence

import "container/heap"

// queue hands out node numbers by rising key, the last pushed of equal keys first: so of equally promising states the search
// takes the deepest, and comes to an order soon.
type queue struct {
	keys    keyHeap
	buckets map[int32]*[]int32
	n       int
}

type keyHeap []int32

func (h keyHeap) Len() int           { return len(h) }
func (h keyHeap) Less(i, j int) bool { return h[i] < h[j] }
func (h keyHeap) Swap(i, j int)      { h[i], h[j] = h[j], h[i] }
func (h *keyHeap) Push(x any)        { *h = append(*h, x.(int32)) }
func (h *keyHeap) Pop() any {
	last := (*h)[len(*h)-1]
	*h = (*h)[:len(*h)-1]
	return last
}

func newQueue() *queue { return &queue{buckets: map[int32]*[]int32{}} }

func (q *queue) push(key, id int32) {
	b := q.buckets[key]
	if b == nil {
		b = new([]int32)
		q.buckets[key] = b
		heap.Push(&q.keys, key)
	}
	*b = append(*b, id)
	q.n++
}

// least returns the lowest key, and false if the queue is empty. Empty buckets are dropped on the way.
func (q *queue) least() (int32, bool) {
	for len(q.keys) > 0 {
		key := q.keys[0]
		if len(*q.buckets[key]) > 0 {
			return key, true
		}
		delete(q.buckets, key)
		heap.Pop(&q.keys)
	}
	return 0, false
}

// pop returns a node number of the lowest key. The queue must not be empty.
func (q *queue) pop() (key, id int32) {
	key, _ = q.least()
	b := q.buckets[key]
	id = (*b)[len(*b)-1]
	*b = (*b)[:len(*b)-1]
	q.n--
	return key, id
}
