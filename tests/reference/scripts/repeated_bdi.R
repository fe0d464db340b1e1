# Rscript repeated_bdi.R FILE: reads the people of the reference file and prints what R makes of them.
f <- jsonlite::fromJSON(commandArgs(TRUE)[1], simplifyVector = FALSE)$cases[[1]]$input
num <- function(v) as.numeric(sapply(v, function(x) if (is.null(x)) NA else x))
visits <- t(sapply(f$after, num)); day <- num(f$days); treated <- num(f$treated)
drug <- substr(unlist(f$stratum), 1, 1); length <- substr(unlist(f$stratum), 2, 2); before <- num(f$before)
long <- data.frame(person = rep(seq_along(before), 4), bdi = as.vector(visits), time = rep(c(2, 4, 6, 8), each = length(before)), before, treated, drug, length)
fit <- lme4::lmer(bdi ~ before + time + treated + drug + length + (1 | person), long, na.action = na.omit)
mixed <- coef(summary(fit))["treated", 1:2]
every <- subset(long, person %in% which(rowSums(is.na(visits)) == 0))
alike <- lme4::lmer(bdi ~ before + time + treated + drug * length + (1 | person), every)
# One value a person: the mean of the visits that there are, on the value before, the days to their middle, the stratum and the treatment.
effect <- function(used) {
  d <- data.frame(y = rowMeans(visits[, used], na.rm = TRUE), before, treated, stratum = factor(paste0(drug, length)))
  d$days <- sapply(seq_along(before), function(i) mean(day[used][!is.na(visits[i, used])]))
  d <- d[!is.nan(d$y), ]
  m <- lm(y ~ before + days + stratum + treated, d)
  e <- -coef(m)[["treated"]]; s <- sqrt(sandwich::vcovHC(m, type = "HC3")["treated", "treated"])
  df <- min(df.residual(m), sum(d$treated) + 3); each <- -(coef(m)[["treated"]] - dfbeta(m)[, "treated"])
  list(people = nrow(d), estimate = e, low95 = e - qt(.975, df) * s, high95 = e + qt(.975, df) * s, degrees = df, p = pt(e / s, df, lower.tail = FALSE), leftOut = range(each))
}
change <- before - rowMeans(visits, na.rm = TRUE); back <- t.test(change[treated == 0])
steps <- unlist(apply(cbind(before, visits), 1, function(v) diff(na.omit(v))))
out <- list(
  mixed = list(estimate = mixed[[1]], error = mixed[[2]], values = nobs(fit), people = lme4::ngrps(fit)[[1]]),
  complete = list(estimate = -lme4::fixef(alike)[["treated"]], people = length(unique(every$person))),
  effect = effect(1:4), retained = effect(2:3),
  cameBack = list(estimate = back$estimate[[1]], low95 = back$conf.int[1], high95 = back$conf.int[2]),
  gained = mean(change[treated == 1], na.rm = TRUE), visitSd = sqrt(mean(steps^2) / 2)
)
cat(jsonlite::toJSON(out, auto_unbox = TRUE, digits = 12), "\n")
