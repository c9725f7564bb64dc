"""Writes references-added.json: check values computed with scipy or mpmath where references.json has none.

Run with Debian's or any Python 3 that has both:  python3 tests/published/compute-added-references.py
"""

import itertools
import json
import math
from pathlib import Path

import mpmath
import scipy
from scipy import integrate, optimize, special, stats
from scipy.stats.contingency import odds_ratio

PROVENANCE = [f"computed-with-scipy {scipy.__version__}"]


def fisher_interval(table):
    result = odds_ratio(table)
    interval = result.confidence_interval(0.95)
    return {"low": interval.low, "high": interval.high, "p": stats.fisher_exact(table).pvalue}


def rate_ratio_p(case):
    share = case["t1"] / (case["t1"] + case["t2"])
    return stats.binomtest(case["x1"], case["x1"] + case["x2"], share).pvalue


def welch_interval(case):
    """Welch's interval of a difference of two means from their sizes, means and standard deviations."""
    (n1, m1, s1), (n2, m2, s2) = case["first"], case["second"]
    v1, v2 = s1 * s1 / n1, s2 * s2 / n2
    freedom = (v1 + v2) ** 2 / (v1 * v1 / (n1 - 1) + v2 * v2 / (n2 - 1))
    half = stats.t.ppf(0.975, freedom) * math.sqrt(v1 + v2)
    return {"low": m1 - m2 - half, "high": m1 - m2 + half}


def cumulative(case):
    x, a, b = case["x"], case.get("a"), case.get("b")
    match case["of"]:
        case "beta":
            return special.betainc(a, b, x)
        case "beta upper":
            return special.betaincc(a, b, x)
        case "gamma":
            return special.gammainc(a, x)
        case "normal upper":
            return stats.norm.sf(x)


def product_of_betas_interval(case):
    """Quantiles of the product of two independent Beta(passed + 1/2, failed + 1/2)."""
    first, second = (stats.beta(passed + 0.5, failed + 0.5) for passed, failed in case)

    def cdf(limit):
        lowest = first.ppf(1e-13)
        return integrate.quad(lambda x: first.pdf(x) * second.cdf(limit / x), lowest, 1, limit=500, epsabs=1e-11)[0]

    low, high = (optimize.brentq(lambda x: cdf(x) - p, 0.01, 1) for p in (0.025, 0.975))
    return {"low": low, "high": high}


def mean_log_loss(case):
    losses = [-math.log(p) for p in case["p"] * case["times"]]
    interval = stats.ttest_1samp(losses, 0).confidence_interval(0.95)
    return {"logLoss": sum(losses) / len(losses), "low": interval.low, "high": interval.high}


def kaplan_meier_interval(case):
    failed = [time for time, status in zip(case["time"], case["status"]) if status]
    censored = [time for time, status in zip(case["time"], case["status"]) if not status]
    survival = stats.ecdf(stats.CensoredData(uncensored=failed, right=censored)).sf
    interval = survival.confidence_interval(0.95, method="log-log")
    times = sorted(set(failed))
    return {"low": list(interval.low.evaluate(times)), "high": list(interval.high.evaluate(times))}


def gamma_prior(case):
    """Maximum likelihood of negative binomial counts, by Nelder and Mead's simplex."""

    def loss(logs):
        shape, rate = (math.exp(value) for value in logs)
        return -sum(stats.nbinom.logpmf(x, shape, rate / (rate + e)) for x, e in zip(case["observed"], case["expected"]))

    best = optimize.minimize(loss, [0, 0], method="Nelder-Mead", options={"xatol": 1e-10, "fatol": 1e-12, "maxiter": 4000})
    return {"shape": math.exp(best.x[0]), "rate": math.exp(best.x[1])}


def gamma_quantile(case):
    mpmath.mp.dps = 40
    shape, probability = mpmath.mpf(case["shape"]), mpmath.mpf(case["p"])

    def lower(x):
        term = total = mpmath.mpf(1)
        step = 0
        while term > total * mpmath.mpf(10) ** -30:
            step += 1
            term *= x / (shape + step)
            total += term
        return mpmath.exp(shape * mpmath.log(x) - x - mpmath.loggamma(shape + 1)) * total

    start = special.gammaincinv(case["shape"], case["p"])
    root = mpmath.findroot(lambda x: mpmath.log(lower(x) / probability), (start, start * (1 + 1e-6)), tol=1e-40)
    return float(root)


def sampling_acceptance(case):
    if "fraction" in case:
        return stats.binom.cdf(case["ac"], case["n"], case["fraction"])
    return stats.hypergeom.cdf(case["ac"], case["lot"], case["nonconforming"], case["n"])


def finite_lot_limit(case):
    """Largest number of nonconforming items with P(X <= found) > 0.05, tried one by one."""
    return max(
        items
        for items in range(case["found"], case["lot"] - case["n"] + case["found"] + 1)
        if stats.hypergeom.cdf(case["found"], case["lot"], items, case["n"]) > 0.05
    )


def predicted_count(case):
    coming = stats.nbinom(case["failures"] + 0.5, case["exposure"] / (case["exposure"] + case["coming"]))
    return {"low": int(coming.ppf(0.025)), "high": int(coming.ppf(0.975))}


def noncentral_t(case):
    """Root of the integral of the normal probability over the distribution of the standard deviation, 30 digits."""
    mpmath.mp.dps = 30
    freedom, shift = mpmath.mpf(case["freedom"]), mpmath.mpf(case["shift"])
    constant = 2 * (freedom / 2) ** (freedom / 2) / mpmath.gamma(freedom / 2)
    spread = 1 / mpmath.sqrt(2 * freedom)
    edges = [max(0, 1 + step * spread) for step in (-14, -6, -3, -1, 0, 1, 3, 6, 14, 25)]
    edges = sorted(set(edges))

    def cdf(t):
        def density(s):
            return constant * s ** (freedom - 1) * mpmath.exp(-freedom * s * s / 2) * mpmath.ncdf(t * s - shift)

        return mpmath.quad(density, edges)

    start = stats.nct.ppf(case["p"], case["freedom"], case["shift"])
    if not math.isfinite(start):
        start = case["shift"]
    return float(mpmath.findroot(lambda t: cdf(t) - case["p"], (start, start * 1.001), tol=1e-18))


def fraction_below(case):
    """Limits of the capability and of the fraction below the minimum, at 95 %, from scipy's noncentral t."""
    n, margin = case["n"], case["margin"]
    t = margin * math.sqrt(n)
    low, high = (
        optimize.brentq(lambda shift: stats.nct.cdf(t, n - 1, shift) - p, t - 12, t + 12, xtol=1e-12) / math.sqrt(n)
        for p in (0.975, 0.025)
    )
    return {
        "capabilityLow": low / 3,
        "capabilityHigh": high / 3,
        "belowLow": stats.norm.sf(high),
        "belowHigh": stats.norm.sf(low),
    }


def anderson_darling(values):
    return stats.anderson(values, dist="norm", method="interpolate").statistic


def order_statistic_rank(case):
    ranks = range(1, case["n"] + 1)
    return max(r for r in ranks if stats.binom.sf(r - 1, case["n"], 1 - case["coverage"]) >= case["confidence"])


def runs_distribution(text):
    """Every order of the same signs, counted."""

    def runs(signs):
        return 1 + sum(a != b for a, b in zip(signs, signs[1:]))

    orders = [
        runs(["+" if place in chosen else "-" for place in range(len(text))])
        for chosen in map(set, itertools.combinations(range(len(text)), text.count("+")))
    ]
    seen = runs(text)
    return {
        "runs": seen,
        "fewer": sum(count <= seen for count in orders) / len(orders),
        "more": sum(count >= seen for count in orders) / len(orders),
    }


def pert(case):
    """Moments and quantiles of the beta distribution on low to high with the usual weight of 4 on the likeliest value."""
    low, likely, high = case
    span = high - low
    beta = stats.beta(1 + 4 * (likely - low) / span, 1 + 4 * (high - likely) / span, loc=low, scale=span)
    return {"mean": beta.mean(), "low": beta.ppf(0.025), "high": beta.ppf(0.975)}


def entry(id, method, source, tolerance, inputs, compute, provenance=PROVENANCE):
    cases = [{"input": value, "expected": compute(value)} for value in inputs]
    return {"id": id, "method": method, "source": source, "provenance": provenance, "tolerance": tolerance, "cases": cases}


ENTRIES = [
    entry(
        "added-fisher-interval",
        "conditional interval of the odds ratio and two-sided p",
        "scipy.stats.contingency.odds_ratio, scipy.stats.fisher_exact",
        "rel 1e-6",
        [[[3, 1], [1, 3]], [[120, 880], [90, 1110]], [[5, 995], [0, 800]], [[40, 60], [400, 9600]]],
        fisher_interval,
    ),
    entry(
        "added-rate-ratio-large-counts",
        "two-sided conditional test of two Poisson rates",
        "scipy.stats.binomtest",
        "rel 1e-6",
        [
            {"x1": 50_100, "t1": 1e9, "x2": 49_300, "t2": 1.01e9},
            {"x1": 3, "t1": 2e6, "x2": 4000, "t2": 9e8},
            {"x1": 1_000_000, "t1": 3e9, "x2": 1_003_000, "t2": 3e9},
            {"x1": 900, "t1": 1e6, "x2": 400, "t2": 1e6},
        ],
        rate_ratio_p,
    ),
    entry(
        "added-welch-interval",
        "95 % interval of a difference of means with unequal variances; [size, mean, standard deviation] each",
        "Welch B.L. (1947) Biometrika 34:28-35, evaluated with scipy.stats.t",
        "abs 0.02, a seeded simulation",
        [
            {"first": [40, 7.1, 0.9], "second": [25, 4.6, 0.5]},
            {"first": [400, 5.2, 1.4], "second": [900, 4.9, 1.1]},
            {"first": [12, 9.0, 0.4], "second": [15, 6.5, 0.6]},
        ],
        welch_interval,
    ),
    entry(
        "added-mean-log-loss",
        "mean of -ln p with Student's t interval",
        "scipy.stats.ttest_1samp",
        "rel 1e-9",
        [{"p": [0.9, 0.7, 0.35, 0.8, 0.99, 0.6, 0.15, 0.75, 0.5, 0.88], "times": 1}, {"p": [0.9, 0.4], "times": 5000}],
        mean_log_loss,
    ),
    entry(
        "added-km-interval",
        "95 % interval of the Kaplan-Meier estimate on the scale ln(-ln S), at every time with a failure",
        "scipy.stats.ecdf, method log-log; the 6-MP data of 6-km-6mp",
        "abs 1e-9",
        [
            {
                "time": [6, 6, 6, 6, 7, 9, 10, 10, 11, 13, 16, 17, 19, 20, 22, 23, 25, 32, 32, 34, 35],
                "status": [1, 1, 1, 0, 1, 0, 1, 0, 0, 1, 1, 0, 0, 0, 1, 1, 0, 0, 0, 0, 0],
            }
        ],
        kaplan_meier_interval,
    ),
    entry(
        "added-gamma-prior",
        "gamma prior of Poisson ratios by maximum likelihood; constructed counts",
        "scipy.stats.nbinom, scipy.optimize.minimize",
        "rel 1e-4",
        [
            {
                "observed": [0, 1, 4, 2, 0, 9, 3, 1, 0, 14, 2, 5, 0, 1, 7],
                "expected": [1.2, 2, 2.5, 1, 0.8, 3, 3.5, 2, 1.1, 4, 2.2, 2.9, 1.5, 0.6, 3],
            }
        ],
        gamma_prior,
    ),
    entry(
        "added-gamma-large-shapes",
        "gamma quantiles at large shapes",
        "mpmath, 40 digits: root of the series of the lower incomplete gamma function (scipy is off by 2e-6 at shape 1e7)",
        "rel 1e-11",
        [{"p": p, "shape": shape} for shape in (19_999, 20_000, 1e6, 1e7) for p in (1e-6, 0.025, 0.975, 0.999999)],
        gamma_quantile,
        [f"computed-with-mpmath {mpmath.__version__}"],
    ),
    entry(
        "added-distribution-functions",
        "cumulative probabilities whatever library supplies them",
        "scipy.special betainc, betaincc, gammainc; scipy.stats.norm.sf",
        "rel 1e-8",
        [
            {"of": "beta", "x": 0.3, "a": 11, "b": 22},
            {"of": "beta", "x": 0.499, "a": 1e6, "b": 1e6},
            {"of": "beta upper", "x": 0.01, "a": 1e4, "b": 1e6},
            {"of": "beta upper", "x": 1e-3, "a": 1, "b": 1e5},
            {"of": "gamma", "x": 8, "a": 10},
            {"of": "gamma", "x": 24.2, "a": 137},
            {"of": "gamma", "x": 1e5, "a": 1e5},
            {"of": "normal upper", "x": 4.5},
            {"of": "normal upper", "x": -0.7},
        ],
        cumulative,
    ),
    entry(
        "added-rolled-yield-interval",
        "95 % interval of a product of two proportions, Jeffreys prior each; [passed, failed] per step",
        "numerical integration with scipy",
        "abs 0.002, a seeded simulation",
        [[[950, 50], [931, 19]], [[40, 3], [55, 1]]],
        product_of_betas_interval,
    ),
    entry(
        "added-sampling-acceptance",
        "chance that a single sample passes; binomial, or hypergeometric with a lot",
        "scipy.stats.binom, scipy.stats.hypergeom",
        "rel 1e-7",
        [
            {"n": 125, "ac": 3, "fraction": 0.01},
            {"n": 80, "ac": 1, "fraction": 0.06},
            {"n": 13, "ac": 0, "fraction": 0.2},
            {"n": 50, "ac": 1, "lot": 400, "nonconforming": 12},
            {"n": 32, "ac": 0, "lot": 200, "nonconforming": 5},
            {"n": 200, "ac": 5, "lot": 100_000, "nonconforming": 4000},
        ],
        sampling_acceptance,
    ),
    entry(
        "added-finite-lot-limit",
        "one-sided 95 % upper limit of nonconforming items in a lot, those found included",
        "scipy.stats.hypergeom, every number tried",
        "exact",
        [
            {"found": 0, "n": 50, "lot": 400},
            {"found": 0, "n": 59, "lot": 100_000},
            {"found": 2, "n": 80, "lot": 1000},
            {"found": 1, "n": 19, "lot": 20},
        ],
        finite_lot_limit,
    ),
    entry(
        "added-predicted-count",
        "95 % limits of a coming count after a past one, Jeffreys prior",
        "scipy.stats.nbinom",
        "exact",
        [
            {"failures": 12, "exposure": 100_000, "coming": 50_000},
            {"failures": 0, "exposure": 100_000, "coming": 80_000},
            {"failures": 340, "exposure": 1_000_000, "coming": 2_000_000},
        ],
        predicted_count,
    ),
    entry(
        "added-noncentral-t",
        "quantiles of the noncentral t distribution",
        "mpmath, numerical integration, 30 digits",
        "rel 1e-7",
        [
            {"p": 0.95, "freedom": 1, "shift": 2.3},
            {"p": 0.95, "freedom": 4, "shift": 0},
            {"p": 0.99, "freedom": 42, "shift": 8.4},
            {"p": 0.95, "freedom": 499, "shift": 52},
            {"p": 0.05, "freedom": 29, "shift": 9},
        ],
        noncentral_t,
        [f"computed-with-mpmath {mpmath.__version__}"],
    ),
    entry(
        "added-fraction-below",
        "95 % limits of (mean - minimum) / 3 s and of the fraction below; margin in standard deviations",
        "scipy.stats.nct, scipy.optimize.brentq",
        "rel 1e-6",
        [{"n": 10, "margin": 4.19}, {"n": 30, "margin": 3.1}, {"n": 5, "margin": 0.4}, {"n": 100, "margin": 4}],
        fraction_below,
    ),
    entry(
        "added-anderson-darling",
        "Anderson-Darling statistic, mean and standard deviation estimated; constructed values",
        "scipy.stats.anderson",
        "rel 1e-8",
        [
            [62.1, 65.4, 58.9, 70.2, 66.8, 61.5, 64.0, 59.7, 68.3, 63.6],
            [41, 42, 42, 43, 44, 44, 45, 47, 52, 61, 78, 103],
            [10, 10, 10, 11, 11, 12, 30, 30, 31, 31, 31, 32],
        ],
        anderson_darling,
    ),
    entry(
        "added-order-statistic-rank",
        "largest order statistic that is a lower tolerance bound",
        "scipy.stats.binom, every rank tried",
        "exact",
        [
            {"n": 93, "coverage": 0.95, "confidence": 0.95},
            {"n": 200, "coverage": 0.95, "confidence": 0.95},
            {"n": 500, "coverage": 0.9, "confidence": 0.99},
        ],
        order_statistic_rank,
    ),
    entry(
        "added-runs-distribution",
        "chance of so few and of so many runs about the median in random order",
        "every order counted",
        "rel 1e-9",
        ["+++++-----", "+-+-+-+-+-", "++-+--+-+-", "++++++------++--"],
        runs_distribution,
        ["computed by enumeration in Python"],
    ),
    entry(
        "added-pert",
        "beta-PERT distribution of an effect: mean, 2.5 % and 97.5 % quantiles",
        "scipy.stats.beta",
        "abs 0.005, a seeded simulation",
        [[0.2, 0.5, 0.9], [0, 0.1, 0.6], [0.6, 0.9, 0.95]],
        pert,
    ),
]

# scipy gives infinity where there is no upper limit; JSON has no such number, so null stands for it.
text = json.dumps(ENTRIES, indent=1).replace("Infinity", "null")
Path(__file__).with_name("references-added.json").write_text(text + "\n")
