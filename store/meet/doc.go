// Package meet has a book and the journal of its crew take from each other what each
// lacks. The journal is a stream on a JetStream server, or on a cluster of them: it only
// grows. A message of it is a batch of a journal's lines, packed and sealed with the crew's
// key; its subject names the block. A book keeps its own place in the stream and what it
// has met there (see store.Place), so that nothing is sent twice: what it lacks is read to
// the end first, and a message is taken by the server only if it still is the end.
package meet
