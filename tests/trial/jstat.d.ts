/** The part of the statistics library that the outside checks use; it brings no types of its own. */
declare module "jstat" {
	interface Continuous {
		pdf(x: number, a: number, b: number): number;
		cdf(x: number, a: number, b: number): number;
		inv(p: number, a: number, b: number): number;
	}
	export const jStat: {
		readonly beta: Continuous;
		readonly normal: Continuous;
		readonly invgamma: Continuous;
		readonly binomial: { cdf(k: number, n: number, p: number): number };
		readonly hypgeom: {
			pdf(k: number, all: number, marked: number, dealt: number): number;
		};
		gammaln(x: number): number;
		mean(values: readonly number[]): number;
		/** Of the values as all there are. */
		stdev(values: readonly number[]): number;
		variance(values: readonly number[]): number;
	};
	const library: { readonly jStat: typeof jStat };
	export default library;
}
