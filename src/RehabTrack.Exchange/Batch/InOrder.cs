namespace RehabTrack.Exchange.Batch;

/// <summary>Work on the pieces of a sequence on several threads, its results in the order of the pieces.</summary>
internal static class InOrder
{
    /// <summary>
    /// The result of each piece. The sequence is drawn on the caller's thread, never further ahead than the pieces at work, so that
    /// memory stays bounded; when it is left early, work that has begun is waited for.
    /// </summary>
    /// <param name="pieces">The pieces.</param>
    /// <param name="atOnce">How many pieces are at work or waiting for their turn, at least 1.</param>
    /// <param name="work">What is done with a piece; an exception comes out where the result would.</param>
    public static IEnumerable<TResult> Select<T, TResult>(IEnumerable<T> pieces, int atOnce, Func<T, TResult> work)
    {
        Queue<Task<TResult>> begun = new(atOnce);
        try
        {
            foreach (T piece in pieces)
            {
                if (begun.Count == atOnce)
                {
                    yield return begun.Dequeue().GetAwaiter().GetResult();
                }

                begun.Enqueue(Task.Run(() => work(piece)));
            }

            while (begun.TryDequeue(out Task<TResult>? next))
            {
                yield return next.GetAwaiter().GetResult();
            }
        }
        finally
        {
            Task.WhenAll(begun).ContinueWith(_ => { }, TaskScheduler.Default).Wait();
        }
    }
}
