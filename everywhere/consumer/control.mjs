// Does what the policy forbids, to see that it is told of.
try {
  new Function('return 1')();
} catch {
  // As expected.
}
finish({});
