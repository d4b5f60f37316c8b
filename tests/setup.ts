import fc from 'fast-check';

// A fixed seed: a property that holds today holds tomorrow, and one that fails fails for everybody.
fc.configureGlobal({ seed: 20260101 });
