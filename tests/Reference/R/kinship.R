# The kinship of every pair by the tabular method, from its definition:
# a[i, j] = (a[sire of i, j] + a[dam of i, j]) / 2 for j before i; a[i, i] = 1 + a[sire of i, dam of i] / 2; kinship = a / 2.
# Reads pedigree.csv: id,sire,dam,sex with ids from 1 in order, parents first, 0 for a parent not known.
# Writes kinship.bin: the matrix as doubles, low byte first; prints the seconds of processor time that the arithmetic took.
p <- read.csv("pedigree.csv")
n <- nrow(p)
spent <- function() sum(proc.time()[c("user.self", "sys.self")])
started <- spent()
a <- matrix(0, n, n)
for (i in seq_len(n)) {
  s <- p$sire[i]
  d <- p$dam[i]
  if (i > 1) {
    before <- seq_len(i - 1)
    row <- numeric(i - 1)
    if (s > 0) row <- row + a[before, s] / 2
    if (d > 0) row <- row + a[before, d] / 2
    a[before, i] <- row
    a[i, before] <- row
  }
  a[i, i] <- 1 + if (s > 0 && d > 0) a[s, d] / 2 else 0
}
cat(spent() - started, "\n")
writeBin(as.vector(a / 2), "kinship.bin", size = 8, endian = "little")
