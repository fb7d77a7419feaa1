// The worker: runs the Go program, hands it calls and hands back what it says.
(() => {
	// spread makes bytes of the letters that the program is packed in (pack in assemble.go): five stand
	// for four bytes, z for four that are nothing.
	const spread = (packed) => {
		const worth = new Uint8Array(128);
		for (let c = 33; c <= 117; c++) worth[c] = c - 33;
		for (const [other, letter] of [["v", "<"], ["w", "&"], ["x", "\\"]]) worth[other.charCodeAt(0)] = letter.charCodeAt(0) - 33;
		const bytes = new Uint8Array(packed.length * 4);
		let n = 0, value = 0, have = 0;
		for (let i = 0; i < packed.length; i++) {
			const c = packed.charCodeAt(i);
			if (c === 122) {
				n += 4;
				continue;
			}
			value = value * 85 + worth[c];
			if (++have < 5) continue;
			bytes[n++] = value >>> 24;
			bytes[n++] = value >>> 16;
			bytes[n++] = value >>> 8;
			bytes[n++] = value;
			value = have = 0;
		}
		for (let missing = 5 - have; have && missing > 0; missing--) value = value * 85 + 84;
		for (let k = 0; k < have - 1; k++) bytes[n++] = value >>> (24 - 8 * k);
		return bytes.subarray(0, n);
	};

	const unpack = async (packed) => {
		const bytes = spread(packed);
		const stream = new Blob([bytes]).stream().pipeThrough(new DecompressionStream("gzip"));
		return WebAssembly.compileStreaming(new Response(stream, { headers: { "Content-Type": "application/wasm" } }));
	};

	const start = async ({ packed, module }) => {
		const compiled = module ?? await unpack(packed);
		const go = new Go();
		const run = go.run(await WebAssembly.instantiate(compiled, go.importObject));
		run.finally(() => postMessage({ ended: true }));
		postMessage({ ready: true, module: module ? null : compiled });
	};

	let started;

	onmessage = async ({ data }) => {
		if (data.start) {
			started = start(data.start);
			started.catch((e) => postMessage({ failed: String(e) }));
			return;
		}
		try {
			await started;
		} catch {
			return; // said above
		}
		const { id, call, args, files } = data;
		try {
			const { result, problem, made } = globalThis.underlay(call, args, files);
			postMessage({ id, result, problem, made }, made.map((m) => m.buffer));
		} catch {
			// What the program refuses is a problem that it says: it has ended.
			postMessage({ ended: true });
		}
	};
})();
