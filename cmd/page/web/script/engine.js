// An engine is the Go program in a worker of its own. A call that takes too long, or a program that
// ends, costs that call alone: the next one begins with a fresh worker.

// Trouble is why a call has no answer.
export class Trouble extends Error {
	constructor(kind, text) {
		super(text);
		this.kind = kind; // "slow", "ended", "stopped", "failed" or "refused"
	}
}

let code; // the address of the worker's script
let compiled; // the program, once the first worker has unpacked it

function workerCode() {
	code ??= URL.createObjectURL(new Blob([document.getElementById("worker").textContent], { type: "text/javascript" }));
	return code;
}

export class Engine {
	// known returns the files every fresh program is told of first: [{call, args, files}].
	constructor(known = () => []) {
		this.known = known;
		this.waiting = new Map();
		this.count = 0;
	}

	// start begins a worker unless one is running, and waits until it is ready.
	start() {
		if (this.ready) return this.ready;
		const worker = new Worker(workerCode());
		this.worker = worker;
		this.ready = new Promise((resolve, reject) => {
			worker.onmessage = ({ data }) => {
				if (this.worker !== worker) return;
				if (data.ready) {
					compiled ??= data.module;
					resolve();
				} else if (data.failed) {
					reject(new Trouble("failed", data.failed));
				} else if (data.ended) {
					this.#end(new Trouble("ended", "the program ended"));
				} else {
					this.#answer(data);
				}
			};
			worker.onerror = (e) => reject(new Trouble("failed", e.message));
		});
		worker.postMessage({ start: compiled ? { module: compiled } : { packed: document.getElementById("program").textContent } });
		for (const k of this.known()) this.#send(k.call, k.args, k.files);
		return this.ready;
	}

	#send(call, args, files = []) {
		const id = ++this.count;
		this.worker.postMessage({ id, call, args: JSON.stringify(args), files });
		return id;
	}

	#answer({ id, result, problem, made }) {
		const asked = this.waiting.get(id);
		if (!asked) return;
		this.waiting.delete(id);
		clearTimeout(asked.timer);
		if (problem !== undefined) asked.reject(new Trouble("refused", problem));
		else asked.resolve({ ...JSON.parse(result), made });
	}

	#end(trouble) {
		this.worker?.terminate();
		this.worker = this.ready = undefined;
		const waiting = [...this.waiting.values()];
		this.waiting.clear();
		for (const asked of waiting) {
			clearTimeout(asked.timer);
			asked.reject(trouble);
		}
	}

	// stop gives up what is under way.
	stop() {
		this.#end(new Trouble("stopped", "something newer was asked for"));
	}

	// giveWay ends what is under way where all of it may be asked for again at any time.
	giveWay() {
		if (this.waiting.size > 0 && [...this.waiting.values()].every((asked) => asked.again)) this.stop();
	}

	// also tells a running program of a file; one that is not running yet learns it from known.
	also({ call, args, files }) {
		if (this.worker) this.#send(call, args, files);
	}

	// call asks the program, which has so many seconds for it once it runs. Again says that the answer
	// may be given up for a newer call.
	async call(call, args, { files = [], seconds = 10, again = false } = {}) {
		await this.start();
		return new Promise((resolve, reject) => {
			const id = this.#send(call, args, files);
			const timer = setTimeout(() => this.#end(new Trouble("slow", `nothing came of it in ${seconds} seconds`)), seconds * 1000);
			this.waiting.set(id, { resolve, reject, timer, again });
		});
	}
}
