using System.Buffers;
using System.Runtime.InteropServices;

namespace RehabTrack.Rechecks.Linking;

/// <summary>
/// Aligns one examination with the tracks of the others: a pair hidden Markov model whose shift is shared by all paths and whose common
/// change of the lesion is shared along a path, both summed over grids. The object is reused from one alignment to the next and allocates
/// nothing once its tables are as large as the case needs; they are borrowed and given back.
/// </summary>
internal sealed class ExaminationAligner : IDisposable
{
    private const double NegligibleWeight = 1e-9;

    private readonly LinkingSettings _settings;
    private readonly ShiftGrid _grid;
    private readonly LinkTerms _terms;
    private readonly List<Block> _blocks = [];
    private readonly double[] _logWeights;
    private readonly double[] _laneWeights;
    private readonly double[][] _logPathSums;
    private readonly bool[] _pathHasLesion;
    private readonly double[] _changeCentre;
    private readonly double[] _growth;
    private readonly double[] _predicted;
    private double[] _odds = [];
    private double[] _factors = [];
    private double[] _forward = [];
    private double[] _backward = [];
    private double[] _blockProbabilities = [];
    private double[] _scores = [];
    private double[] _seen = [];
    private int[] _forwardExponents = [];
    private int[] _backwardExponents = [];

    public ExaminationAligner(LinkingSettings settings, int pathCount)
    {
        _settings = settings;
        _grid = new ShiftGrid(settings);
        _terms = new LinkTerms(settings);
        _logWeights = new double[_grid.Lanes];
        _laneWeights = new double[_grid.Lanes];
        _growth = new double[_grid.Changes.Length];
        _predicted = new double[_grid.Changes.Length];
        _logPathSums = [.. Enumerable.Range(0, pathCount).Select(_ => new double[_grid.Changes.Length * _grid.Lanes])];
        _pathHasLesion = new bool[pathCount];
        _changeCentre = new double[pathCount];
        Consensus = [.. Enumerable.Range(0, pathCount).Select(_ => new Consensus())];
        Probabilities = [.. Enumerable.Range(0, pathCount).Select(_ => Array.Empty<double>())];
        Links = [.. Enumerable.Range(0, pathCount).Select(_ => Array.Empty<int>())];
        LesionSize = new double[pathCount];
    }

    /// <summary>By path: the tracks aligned with.</summary>
    public Consensus[] Consensus { get; }

    /// <summary>By path: probability that a place belongs to a track: track·places + place.</summary>
    public double[][] Probabilities { get; }

    /// <summary>By path and place: the track of the reported alignment, or −1.</summary>
    public int[][] Links { get; }

    /// <summary>Posterior mean of the shift, cm.</summary>
    public double Shift { get; private set; }

    /// <summary>Posterior variance of the shift, cm².</summary>
    public double ShiftVariance { get; private set; }

    /// <summary>By path: posterior mean of the log of the lesion's common size.</summary>
    public double[] LesionSize { get; }

    /// <summary>Log of the ligament's common size.</summary>
    public double LigamentSize { get; private set; }

    /// <summary>Aligns an examination whose places stand on no column, or on columns without regard to them.</summary>
    public void Align(CourseState state, int examination)
    {
        (double priorShift, double priorVariance) = PriorShift(state, examination);
        double usual = Neighbour(state, state.LigamentSize, examination);
        LigamentSize = state.Placed[examination] ? state.LigamentSize[examination] : usual;
        for (int path = 0; path < state.PathCount; path++)
        {
            Consensus[path].Gather(state, path, examination);
            _changeCentre[path] = Neighbour(state, state.LesionSize[path], examination);
            int cells = Consensus[path].Count * state.Places[examination][path].Length;
            if (Probabilities[path].Length < cells)
            {
                Probabilities[path] = new double[cells + 32];
            }

            if (Links[path].Length < state.Places[examination][path].Length)
            {
                Links[path] = new int[state.Places[examination][path].Length + 8];
            }
        }

        Solve(state, examination, priorShift, priorVariance, again: false);
        double before = LigamentSize;
        LigamentSize = CommonLigamentSize(state, examination, usual);
        if (Math.Abs(LigamentSize - before) > _settings.LogLigamentAreaStandardDeviation / 4)
        {
            Solve(state, examination, priorShift, priorVariance, again: true);
        }

        for (int path = 0; path < state.PathCount; path++)
        {
            ChooseLinks(state, examination, path);
        }
    }

    /// <inheritdoc />
    public void Dispose()
    {
        Return(ref _odds);
        Return(ref _factors);
        Return(ref _forward);
        Return(ref _backward);
        Return(ref _blockProbabilities);
        Return(ref _scores);
        Return(ref _seen);
    }

    private void Solve(CourseState state, int examination, double priorShift, double priorVariance, bool again)
    {
        _blocks.Clear();
        int odds = 0;
        int factors = 0;
        for (int path = 0; path < state.PathCount; path++)
        {
            Divide(state, examination, path, ref odds, ref factors);
        }

        Grow(ref _odds, odds);
        Grow(ref _factors, factors);
        foreach (Block block in CollectionsMarshal.AsSpan(_blocks))
        {
            FillOdds(state, examination, block, priorShift);
            // Another size of the ligament says nothing of the lesion.
            if (!again)
            {
                FillFactors(state, examination, block);
            }
        }

        SumForward(state.PathCount);
        WeighShifts(state.PathCount, priorVariance, priorShift);
        SumBackward(state, examination);
    }

    /// <summary>Cuts a path at its pinned links: what lies above one cannot be linked to what lies below.</summary>
    private void Divide(CourseState state, int examination, int path, ref int odds, ref int factors)
    {
        PlaceNode[] places = state.Places[examination][path];
        Consensus consensus = Consensus[path];
        Probabilities[path].AsSpan(0, consensus.Count * places.Length).Clear();
        _pathHasLesion[path] =
            Array.Exists(places, place => place.Lesion > 0)
            && consensus.Lesion.AsSpan(0, consensus.Count).ContainsAnyInRange(double.Epsilon, double.MaxValue);
        int row = 0;
        int column = 0;
        for (int j = 0; j < places.Length; j++)
        {
            int pinned = PinnedRow(consensus, places[j]);
            if (pinned >= 0)
            {
                AddBlock(path, row, pinned, column, j, pinned: false, ref odds, ref factors);
                AddBlock(path, pinned, pinned + 1, j, j + 1, pinned: true, ref odds, ref factors);
                row = pinned + 1;
                column = j + 1;
            }
        }

        AddBlock(path, row, consensus.Count, column, places.Length, pinned: false, ref odds, ref factors);
    }

    private void AddBlock(int path, int row, int rowEnd, int column, int columnEnd, bool pinned, ref int odds, ref int factors)
    {
        int cells = (rowEnd - row) * (columnEnd - column);
        if (cells == 0)
        {
            return;
        }

        _blocks.Add(new Block(path, row, rowEnd - row, column, columnEnd - column, pinned, odds, factors));
        odds += cells * _grid.Lanes;
        factors += cells * ChangeCount(path);
    }

    private int ChangeCount(int path) => _pathHasLesion[path] ? _grid.Changes.Length : 1;

    private static int PinnedRow(Consensus consensus, PlaceNode place)
    {
        if (place.Group < 0)
        {
            return -1;
        }

        for (int row = 0; row < consensus.Count; row++)
        {
            foreach (PlaceNode? member in consensus.Columns[row].Members)
            {
                if (member is not null && member != place && member.Group == place.Group)
                {
                    return row;
                }
            }
        }

        return -1;
    }

    /// <summary>Odds of each link against leaving both levels unlinked, by shift: position, ligament, how often the track is read.</summary>
    private void FillOdds(CourseState state, int examination, Block block, double priorShift)
    {
        Consensus consensus = Consensus[block.Path];
        PlaceNode[] places = state.Places[examination][block.Path];
        Span<double> odds = _odds.AsSpan(block.Odds, block.Rows * block.Columns * _grid.Lanes);
        double tapeVariance = _settings.TapeStandardDeviationCm * _settings.TapeStandardDeviationCm;
        for (int i = 0; i < block.Rows; i++)
        {
            int row = block.Row + i;
            TrackColumn track = consensus.Columns[row];
            double variance = tapeVariance * (1 + (1.0 / consensus.Readings[row]));
            // How the ratio of neighbours on the grid shrinks, and the first one at an exact hit.
            double shrink = Math.Exp(-_settings.ShiftSumStepCm * _settings.ShiftSumStepCm / variance);
            double half = Math.Exp(-0.5 * _settings.ShiftSumStepCm * _settings.ShiftSumStepCm / variance);
            double presence = _terms.LogPresence(consensus, row, state.Spacing[block.Path]) - (0.5 * Math.Log(2 * Math.PI * variance));
            for (int j = 0; j < block.Columns; j++)
            {
                PlaceNode place = places[block.Column + j];
                Span<double> cell = odds.Slice(((i * block.Columns) + j) * _grid.Lanes, _grid.Lanes);
                cell.Clear();
                if (!block.Pinned && state.Pins.Forbids(track, place))
                {
                    continue;
                }

                double distance = place.Level - consensus.Position[row] - priorShift;
                FillGaussian(cell, distance, variance, shrink, half);
                double factor = block.Pinned ? 1 : Math.Exp(presence + _terms.Ligament(consensus, row, place, LigamentSize));
                double floor = block.Pinned ? PinnedFloor : 0;
                AlignmentKernel.Scale(cell, factor, floor);
            }
        }
    }

    /// <summary>
    /// exp(−(distance − shift)²/2·variance) at every shift of the grid, from its peak outwards: the ratio of neighbours shrinks by a
    /// constant factor, so that two exponentials do for the whole row.
    /// </summary>
    private void FillGaussian(Span<double> cell, double distance, double variance, double shrink, double half)
    {
        double[] shifts = _grid.Shifts;
        double step = _settings.ShiftSumStepCm;
        int peak = shifts.Length == 1 ? 0 : (int)Math.Clamp(Math.Round((distance - shifts[0]) / step), 0, shifts.Length - 1);
        double away = distance - shifts[peak];
        double highest = Math.Exp(-0.5 * away * away / variance);
        if (highest == 0)
        {
            return;
        }

        double tilt = Math.Exp(step * away / variance);
        cell[peak] = highest;
        double value = highest;
        double ratio = half * tilt;
        foreach (ref double above in cell[(peak + 1)..shifts.Length])
        {
            value *= ratio;
            above = value;
            ratio *= shrink;
        }

        value = highest;
        ratio = half / tilt;
        for (int k = peak - 1; k >= 0; k--)
        {
            value *= ratio;
            cell[k] = value;
            ratio *= shrink;
        }
    }

    /// <summary>What a pinned link weighs however far apart its places were read: a person's word does not drag the whole tape along.</summary>
    private const double PinnedFloor = 1e-3;

    /// <summary>What the lesion adds to the odds of each link, for each common change.</summary>
    private void FillFactors(CourseState state, int examination, Block block)
    {
        int cells = block.Rows * block.Columns;
        int changes = ChangeCount(block.Path);
        Span<double> factors = _factors.AsSpan(block.Factors, cells * changes);
        factors.Fill(1);
        double agreement = Math.Exp(_settings.NoLesionAgreement);
        Consensus consensus = Consensus[block.Path];
        ReadOnlySpan<PlaceNode> places = state.Places[examination][block.Path].AsSpan(block.Column, block.Columns);
        Grow(ref _seen, block.Columns);
        for (int j = 0; j < block.Columns; j++)
        {
            _seen[j] = Math.Asinh(places[j].Lesion);
        }

        for (int k = 0; k < changes; k++)
        {
            _growth[k] = Math.Exp(_changeCentre[block.Path] + (changes > 1 ? _grid.Changes[k] : 0));
        }

        for (int i = 0; i < block.Rows; i++)
        {
            int row = block.Row + i;
            if (consensus.LesionReadings[row] == 0)
            {
                continue;
            }

            LinkAgreement lesionTerm = _terms.Lesion(consensus.LesionReadings[row]);
            double lesion = consensus.Lesion[row];
            for (int k = 0; k < changes; k++)
            {
                _predicted[k] = lesion == 0 ? 0 : Math.Asinh(lesion * _growth[k]);
            }

            for (int j = 0; j < block.Columns; j++)
            {
                if (double.IsNaN(places[j].Lesion))
                {
                    continue;
                }

                Span<double> cell = factors[((i * block.Columns) + j)..];
                bool none = places[j].Lesion == 0 && lesion == 0;
                for (int k = 0; k < changes; k++)
                {
                    cell[k * cells] = none ? agreement : lesionTerm.Odds(_seen[j] - _predicted[k]);
                }
            }
        }
    }

    private void SumForward(int pathCount)
    {
        for (int path = 0; path < pathCount; path++)
        {
            Array.Clear(_logPathSums[path]);
        }

        foreach (Block block in CollectionsMarshal.AsSpan(_blocks))
        {
            GrowTables(block);
            int cells = block.Rows * block.Columns;
            ReadOnlySpan<double> odds = _odds.AsSpan(block.Odds, cells * _grid.Lanes);
            for (int k = 0; k < ChangeCount(block.Path); k++)
            {
                Span<double> logSums = _logPathSums[block.Path].AsSpan(k * _grid.Lanes, _grid.Lanes);
                ReadOnlySpan<double> factor = _factors.AsSpan(block.Factors + (k * cells), cells);
                if (block.Pinned)
                {
                    for (int lane = 0; lane < _grid.Shifts.Length; lane++)
                    {
                        logSums[lane] += Math.Log(odds[lane] * factor[0]);
                    }

                    continue;
                }

                AlignmentKernel.Forward(odds, factor, block.Rows, block.Columns, _grid.Lanes, 0, _grid.Lanes, _forward, _forwardExponents);
                ReadOnlySpan<double> totals = _forward.AsSpan(
                    ((block.Rows * (block.Columns + 1)) + block.Columns) * _grid.Lanes,
                    _grid.Lanes
                );
                double scale = _forwardExponents[block.Rows] * Math.Log(2);
                for (int lane = 0; lane < _grid.Shifts.Length; lane++)
                {
                    logSums[lane] += Math.Log(totals[lane]) + scale;
                }
            }
        }
    }

    /// <summary>Turns the sums into the posterior of the shift and, within each shift, of each path's common change.</summary>
    private void WeighShifts(int pathCount, double priorVariance, double priorShift)
    {
        for (int lane = 0; lane < _grid.Shifts.Length; lane++)
        {
            _logWeights[lane] = -0.5 * _grid.Shifts[lane] * _grid.Shifts[lane] / priorVariance;
        }

        for (int path = 0; path < pathCount; path++)
        {
            int changes = ChangeCount(path);
            double[] sums = _logPathSums[path];
            for (int lane = 0; lane < _grid.Shifts.Length; lane++)
            {
                double largest = double.NegativeInfinity;
                for (int k = 0; k < changes; k++)
                {
                    int at = (k * _grid.Lanes) + lane;
                    sums[at] += changes > 1 ? _grid.LogChangePrior[k] : 0;
                    largest = Math.Max(largest, sums[at]);
                }

                double sum = 0;
                for (int k = 0; k < changes; k++)
                {
                    int at = (k * _grid.Lanes) + lane;
                    sums[at] = Math.Exp(sums[at] - largest);
                    sum += sums[at];
                }

                for (int k = 0; k < changes; k++)
                {
                    sums[(k * _grid.Lanes) + lane] /= sum;
                }

                _logWeights[lane] += largest + Math.Log(sum);
            }
        }

        double peak = double.NegativeInfinity;
        for (int lane = 0; lane < _grid.Shifts.Length; lane++)
        {
            peak = Math.Max(peak, _logWeights[lane]);
        }

        double total = 0;
        double mean = 0;
        double square = 0;
        Array.Clear(_laneWeights);
        for (int lane = 0; lane < _grid.Shifts.Length; lane++)
        {
            double weight = Math.Exp(_logWeights[lane] - peak);
            _laneWeights[lane] = weight;
            total += weight;
            mean += weight * _grid.Shifts[lane];
            square += weight * _grid.Shifts[lane] * _grid.Shifts[lane];
        }

        for (int lane = 0; lane < _grid.Shifts.Length; lane++)
        {
            _laneWeights[lane] /= total;
        }

        mean /= total;
        Shift = priorShift + mean;
        ShiftVariance = Math.Max(0, (square / total) - (mean * mean));
        for (int path = 0; path < pathCount; path++)
        {
            LesionSize[path] = _changeCentre[path] + (ChangeCount(path) > 1 ? MeanChange(path) : 0);
        }
    }

    private double MeanChange(int path)
    {
        double mean = 0;
        for (int k = 0; k < _grid.Changes.Length; k++)
        {
            double weight = 0;
            for (int lane = 0; lane < _grid.Shifts.Length; lane++)
            {
                weight += _laneWeights[lane] * _logPathSums[path][(k * _grid.Lanes) + lane];
            }

            mean += weight * _grid.Changes[k];
        }

        return mean;
    }

    private void SumBackward(CourseState state, int examination)
    {
        Span<double> weights = stackalloc double[_grid.Lanes];
        foreach (Block block in CollectionsMarshal.AsSpan(_blocks))
        {
            int places = state.Places[examination][block.Path].Length;
            if (block.Pinned)
            {
                Probabilities[block.Path][(block.Row * places) + block.Column] = 1;
                continue;
            }

            GrowTables(block);
            int cells = block.Rows * block.Columns;
            ReadOnlySpan<double> odds = _odds.AsSpan(block.Odds, cells * _grid.Lanes);
            Span<double> probabilities = _blockProbabilities.AsSpan(0, cells);
            probabilities.Clear();
            for (int k = 0; k < ChangeCount(block.Path); k++)
            {
                ReadOnlySpan<double> factor = _factors.AsSpan(block.Factors + (k * cells), cells);
                if (!Weights(block.Path, k, weights, out int from, out int to))
                {
                    continue;
                }

                AlignmentKernel.Forward(odds, factor, block.Rows, block.Columns, _grid.Lanes, from, to, _forward, _forwardExponents);
                AlignmentKernel.Backward(odds, factor, block.Rows, block.Columns, _grid.Lanes, from, to, _backward, _backwardExponents);
                AlignmentKernel.AddProbabilities(
                    odds,
                    factor,
                    block.Rows,
                    block.Columns,
                    _grid.Lanes,
                    from,
                    to,
                    _forward,
                    _forwardExponents,
                    _backward,
                    _backwardExponents,
                    weights,
                    probabilities
                );
            }

            for (int i = 0; i < block.Rows; i++)
            {
                probabilities
                    .Slice(i * block.Columns, block.Columns)
                    .CopyTo(Probabilities[block.Path].AsSpan(((block.Row + i) * places) + block.Column));
            }
        }
    }

    /// <summary>The weights of the shifts at one common change, and the run of lanes outside of which they are negligible.</summary>
    private bool Weights(int path, int change, Span<double> weights, out int from, out int to)
    {
        int shifts = _grid.Shifts.Length;
        weights.Clear();
        _laneWeights.AsSpan(0, shifts).CopyTo(weights);
        if (ChangeCount(path) > 1)
        {
            ReadOnlySpan<double> shares = _logPathSums[path].AsSpan(change * _grid.Lanes, shifts);
            for (int lane = 0; lane < shares.Length; lane++)
            {
                weights[lane] *= shares[lane];
            }
        }

        from = 0;
        while (from < shifts && !(weights[from] > NegligibleWeight))
        {
            from++;
        }

        to = shifts;
        while (to > from && !(weights[to - 1] > NegligibleWeight))
        {
            to--;
        }

        if (to == from)
        {
            return false;
        }

        from = from / AlignmentKernel.LaneWidth * AlignmentKernel.LaneWidth;
        to = (to + AlignmentKernel.LaneWidth - 1) / AlignmentKernel.LaneWidth * AlignmentKernel.LaneWidth;
        return true;
    }

    /// <summary>The ligament's common size by the links found, drawn towards what was held before.</summary>
    private double CommonLigamentSize(CourseState state, int examination, double centre)
    {
        double variance = _settings.LogLigamentAreaStandardDeviation * _settings.LogLigamentAreaStandardDeviation;
        double prior = _settings.CommonLigamentChangeStandardDeviation * _settings.CommonLigamentChangeStandardDeviation;
        double weight = variance / prior;
        double sum = weight * centre;
        for (int path = 0; path < state.PathCount; path++)
        {
            PlaceNode[] places = state.Places[examination][path];
            for (int row = 0; row < Consensus[path].Count; row++)
            {
                if (Consensus[path].LigamentReadings[row] == 0)
                {
                    continue;
                }

                for (int j = 0; j < places.Length; j++)
                {
                    double probability = Probabilities[path][(row * places.Length) + j];
                    if (probability > 0 && !double.IsNaN(places[j].LogLigamentArea))
                    {
                        weight += probability;
                        sum += probability * (places[j].LogLigamentArea - Consensus[path].LogLigamentArea[row]);
                    }
                }
            }
        }

        return sum / weight;
    }

    /// <summary>The order-preserving alignment with the largest sum of probabilities above the setting.</summary>
    private void ChooseLinks(CourseState state, int examination, int path)
    {
        PlaceNode[] places = state.Places[examination][path];
        Consensus consensus = Consensus[path];
        int width = places.Length + 1;
        Span<int> links = Links[path].AsSpan(0, places.Length);
        links.Fill(-1);
        Grow(ref _scores, (consensus.Count + 1) * width);
        Span<double> scores = _scores.AsSpan(0, (consensus.Count + 1) * width);
        scores.Clear();
        for (int i = 1; i <= consensus.Count; i++)
        {
            for (int j = 1; j <= places.Length; j++)
            {
                scores[(i * width) + j] = Math.Max(
                    Math.Max(scores[((i - 1) * width) + j], scores[(i * width) + j - 1]),
                    scores[((i - 1) * width) + j - 1] + Gain(path, i - 1, j - 1, places.Length)
                );
            }
        }

        int row = consensus.Count;
        int column = places.Length;
        while (row > 0 && column > 0)
        {
            double score = scores[(row * width) + column];
            if (score == scores[((row - 1) * width) + column])
            {
                row--;
            }
            else if (score == scores[(row * width) + column - 1])
            {
                column--;
            }
            else
            {
                links[--column] = --row;
            }
        }
    }

    private double Gain(int path, int row, int column, int places)
    {
        double probability = Probabilities[path][(row * places) + column];
        return probability >= 1 ? CertainGain : probability - _settings.LinkFrom;
    }

    /// <summary>No sum of other links outweighs a pinned one.</summary>
    private const double CertainGain = 1e6;

    private (double Mean, double Variance) PriorShift(CourseState state, int examination)
    {
        double sum = 0;
        int count = 0;
        for (int e = 0; e < state.Placed.Length; e++)
        {
            if (e != examination && state.Placed[e])
            {
                sum += state.Shift[e];
                count++;
            }
        }

        double variance = _settings.ShiftStandardDeviationCm * _settings.ShiftStandardDeviationCm;
        return count == 0 ? (0, variance) : Anchored(state, examination, sum / count, variance * (1 + (1.0 / count)));
    }

    /// <summary>What the fixed points seen at this examination and at others say of the shift, joined with what is held beforehand.</summary>
    private (double Mean, double Variance) Anchored(CourseState state, int examination, double mean, double variance)
    {
        double tape = _settings.TapeStandardDeviationCm * _settings.TapeStandardDeviationCm;
        double weight = 1 / variance;
        double sum = mean / variance;
        foreach (double[] levels in state.FixedPoints)
        {
            if (double.IsNaN(levels[examination]))
            {
                continue;
            }

            double position = 0;
            int seen = 0;
            for (int e = 0; e < levels.Length; e++)
            {
                if (e != examination && state.Placed[e] && !double.IsNaN(levels[e]))
                {
                    position += levels[e] - state.Shift[e];
                    seen++;
                }
            }

            if (seen > 0)
            {
                double own = 1 / (tape * (1 + (1.0 / seen)));
                weight += own;
                sum += own * (levels[examination] - (position / seen));
            }
        }

        return (sum / weight, 1 / weight);
    }

    /// <summary>The mean of what is held of the examinations next to this one.</summary>
    private static double Neighbour(CourseState state, double[] sizes, int examination)
    {
        double sum = 0;
        int count = 0;
        for (int e = examination - 1; e >= 0; e--)
        {
            if (state.Placed[e])
            {
                sum += sizes[e];
                count++;
                break;
            }
        }

        for (int e = examination + 1; e < sizes.Length; e++)
        {
            if (state.Placed[e])
            {
                sum += sizes[e];
                count++;
                break;
            }
        }

        return count == 0 ? 0 : sum / count;
    }

    private void GrowTables(Block block)
    {
        int size = (block.Rows + 1) * (block.Columns + 1) * _grid.Lanes;
        Grow(ref _forward, size);
        Grow(ref _backward, size);
        Grow(ref _blockProbabilities, block.Rows * block.Columns);
        if (_forwardExponents.Length <= block.Rows)
        {
            _forwardExponents = new int[block.Rows + 16];
            _backwardExponents = new int[block.Rows + 16];
        }
    }

    private static void Grow(ref double[] buffer, int size)
    {
        if (buffer.Length < size)
        {
            Return(ref buffer);
            buffer = ArrayPool<double>.Shared.Rent(size);
        }
    }

    private static void Return(ref double[] buffer)
    {
        if (buffer.Length > 0)
        {
            ArrayPool<double>.Shared.Return(buffer);
        }

        buffer = [];
    }

    /// <summary>A part of a path's alignment between pinned links, or a pinned link itself.</summary>
    private readonly record struct Block(int Path, int Row, int Rows, int Column, int Columns, bool Pinned, int Odds, int Factors);
}
