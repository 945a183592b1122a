import { spawnSync } from "node:child_process";
import { readFileSync } from "node:fs";

/** @typedef {{pid: number, since: string | null}} ProcessMark a process, told apart from a later one with its number */

/** @returns {ProcessMark} */
export const thisProcess = () => ({
	pid: process.pid,
	since: startOf(process.pid),
});

/**
 * Whether the very process that left the mark still runs.
 * @param {ProcessMark} mark
 */
export function isRunning({ pid, since }) {
	try {
		process.kill(pid, 0);
	} catch (error) {
		if (error.code === "ESRCH") return false;
		if (error.code !== "EPERM") throw error; // someone else's process runs all the same
	}
	return since === null || startOf(pid) === since;
}

/** When a process began, in whatever words the system has; null where it has none. */
function startOf(pid) {
	try {
		// Linux, also where `ps` is not installed: proc(5), field 22, counted after the name's closing bracket.
		const stat = readFileSync(`/proc/${pid}/stat`, "utf8");
		const boot = readFileSync("/proc/sys/kernel/random/boot_id", "utf8").trim();
		return `${boot} ${stat.slice(stat.lastIndexOf(")") + 2).split(" ")[19]}`;
	} catch (error) {
		if (error.code !== "ENOENT" && error.code !== "ESRCH") throw error;
	}
	const { status, stdout } = spawnSync(
		"ps",
		["-o", "lstart=", "-p", String(pid)],
		{ encoding: "utf8" },
	);
	return status === 0 ? stdout.trim() : null;
}
