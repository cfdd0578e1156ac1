// Read by dts-readable.test.ts, to see that its check can fail: NoInfer came with TypeScript 5.4.
export declare function same<T>(a: T, b: NoInfer<T>): T;
