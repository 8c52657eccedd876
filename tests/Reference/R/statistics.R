# Answers the questions of questions.txt, one R expression a line, with one line of numbers each.

# Every way to share n eggs among k classes, a row each.
shares <- function(n, k) {
  if (k == 1) return(matrix(n, 1, 1))
  do.call(rbind, lapply(0:n, function(first) cbind(first, shares(n - first, k - 1))))
}

# The exact multinomial p value: the chance of every outcome no likelier than the one observed, all outcomes written out.
multinomial.p <- function(observed, ratio) {
  p <- ratio / sum(ratio)
  all <- shares(sum(observed), length(p))
  logs <- lfactorial(sum(observed)) - rowSums(lfactorial(all)) + as.vector(all %*% log(p))
  at <- dmultinom(observed, prob = p, log = TRUE)
  sum(exp(logs[logs <= at + 1e-7]))
}

# The sum of the clutches' chi-squares less the pooled one, and its p value.
heterogeneity <- function(table, ratio) {
  one <- function(x) unname(suppressWarnings(chisq.test(x, p = ratio / sum(ratio)))$statistic)
  rest <- sum(apply(table, 1, one)) - one(colSums(table))
  c(rest, pchisq(rest, (nrow(table) - 1) * (ncol(table) - 1), lower.tail = FALSE))
}

# LOD scores of k recombinants of n, phase known or not.
lod <- function(k, n, r) log10(dbinom(k, n, r) / dbinom(k, n, 0.5))
lod.unknown <- function(k, n, r) log10((dbinom(k, n, r) + dbinom(n - k, n, r)) / 2 / dbinom(k, n, 0.5))

# Double het by double het: both dominant looks, first only, second only, neither.
intercross <- function(counts, coupling) {
  classes <- function(r) { p <- if (coupling) (1 - r)^2 else r^2; c(2 + p, 1 - p, 1 - p, p) / 4 }
  lod <- function(r) (dmultinom(counts, prob = classes(r), log = TRUE) - dmultinom(counts, prob = classes(0.5), log = TRUE)) / log(10)
  found <- optimize(lod, c(0, 0.5), maximum = TRUE, tol = 1e-10)
  places <- c(found$maximum, 0.5)   # optimize looks inside only
  best <- which.max(sapply(places, lod))
  c(places[best], lod(places[best]), lod(0.1), lod(0.3))
}

for (question in readLines("questions.txt")) {
  cat(sprintf("%.17g", eval(parse(text = question))), "\n")
}
