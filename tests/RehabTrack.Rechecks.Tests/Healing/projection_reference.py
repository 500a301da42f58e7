"""The projection's grid written out as a sorted cloud of weighted days, in plain Python: the stored values of ProjectionTests."""

import math

COURSE = [(0, 1.0, 1.25), (60, 0.63, 0.79), (120, 0.41, 0.53), (180, 0.28, 0.37), (240, 0.2, 0.28)]  # day, size, upper 95 %
TARGET = 0.1


def project(points):
    span = points[-1][0]
    weights = [1 / (math.log(upper / size) / 1.959963984540054) ** 2 for _, size, upper in points]
    information = sum(weights)
    cloud = []
    for i in range(41):
        z = 3 * (2 * i / 40 - 1)
        half_life = 90 * math.exp(0.35 * z)
        for j in range(9):
            floor = 0.08 * j / 8
            gaps = [math.log(size) - math.log(floor + (1 - floor) * 2 ** (-day / half_life)) for day, size, _ in points]
            start = sum(w * gap for w, gap in zip(weights, gaps)) / information
            fit = -0.5 * (z * z + sum(w * (gap - start) ** 2 for w, gap in zip(weights, gaps)))
            for k in range(7):
                y = 2.4 * (2 * k / 6 - 1)
                share = (math.exp(math.log(TARGET) - start - y / math.sqrt(information)) - floor) / (1 - floor)
                day = math.inf if share <= 0 else 0 if share >= 1 else -half_life * math.log2(share)
                cloud.append((day, math.exp(fit - 0.5 * y * y)))

    cloud.sort()
    total = sum(weight for _, weight in cloud)

    def quantile(share):
        reached = 0
        for day, weight in cloud:
            reached += weight
            if reached >= share * total:
                return max(math.ceil(day), span) if day <= 2 * span else None

    def interval(held):
        upper = quantile((1 + held) / 2)
        return [quantile(1 - held), None] if upper is None else [quantile((1 - held) / 2), upper]

    print("90 %", interval(0.9), "50 %", interval(0.5), "median", quantile(0.5))
    print("by the limit", sum(weight for day, weight in cloud if day <= 2 * span) / total)
    print("by the next", sum(weight for day, weight in cloud if day <= span + 60) / total)


project(COURSE)
project(COURSE[:4])
project(COURSE[:3])
project([(0, 1.0, 1.25), (60, 0.6, 0.76), (120, 0.33, 0.43), (180, 0.19, 0.26)])
project([(0, 1.0, 1.25), (60, 0.61, 0.77), (120, 0.37, 0.48), (180, 0.24, 0.32)])
